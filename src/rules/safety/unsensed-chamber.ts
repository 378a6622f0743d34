import { widest } from '../../knowledge/families.ts';
import { familiesOnMachine } from '../../knowledge/materials-on-machine.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Temperatures from which a machine is meant for materials that need a warm chamber (common practice, no source). */
const hotEndLimit = 300;
const bedLimit = 120;
const chamberLimit = 60;
const glassTransition = 90;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine'],
  severity: 'note',
  statement: 'An enclosed machine for hot materials has a chamber temperature sensor.',
  rationale:
    'Without a sensor nobody knows whether the chamber is warm enough for the part, or too hot for motors, electronics and filament.',
  source:
    'Common practice, no source: hot end from 300 Cel, bed from 120 Cel, chamber from 60 Cel, or materials with a glass transition from 90 Cel.',
  example: alike(
    'machine',
    { bad: 'false', good: 'true' },
    (value) => `
bed:
  temperatureLimit:
    - {value: 130 Cel, basis: claimed, source: plumstead-wren-sheet}
chamber: {enclosed: true, heated: false, sensed: ${value}}`,
  ),
  *check(profile, { registry }) {
    const { enclosed, sensed } = profile.data.chamber;
    if (!enclosed || sensed) return;
    const reason = hotReason(profile.data, registry);
    if (reason === null) return;
    yield {
      path: ['chamber', 'sensed'],
      part: 'value',
      message: `The machine is enclosed and meant for hot materials (${reason}), but has no chamber temperature sensor`,
      found: 'false',
      allowed: 'true',
      help: 'Fit a sensor, or measure the chamber by hand and write it into each trial; correct `sensed` if there is one. Follow the manual of the machine, and stay with it while it is hot.',
    };
  },
};

function hotReason(machine: Machine, registry: Registry): string | null {
  const ends = machine.hotEnds.map(({ temperatureLimit }) => highestStated(temperatureLimit) ?? 0);
  const [end, bed] = [Math.max(0, ...ends), highestStated(machine.bed.temperatureLimit) ?? 0];
  const chamber = highestStated(machine.chamber.temperatureLimit) ?? 0;
  if (machine.chamber.heated) return 'its chamber is heated';
  if (end >= hotEndLimit) return `hot end to ${shown(end, 'temperature')}`;
  if (bed >= bedLimit) return `bed to ${shown(bed, 'temperature')}`;
  if (chamber >= chamberLimit) return `chamber to ${shown(chamber, 'temperature')}`;
  const hot = familiesOnMachine(machine, registry).filter(
    (family) => (widest([family], 'glassTransition')?.low ?? 0) >= glassTransition,
  );
  return hot.length === 0 ? null : hot.map(({ id }) => id).join(', ');
}
