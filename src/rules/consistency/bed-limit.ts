import { bedBound, bedReach } from '../../knowledge/bed-bound.ts';
import { familiesOf } from '../../knowledge/families.ts';
import { pairingOfTrial, type TrialPairing } from '../../knowledge/pairing-of-trial.ts';
import type { Blame, Hit } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In °C: the bed of a machine without a heater, and the coldest window of a plastic that holds on such a bed with tape or glue. */
const unheated = 30;
const holdsCold = 60;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The bed of a machine gets as hot as the filaments that are run on it need.',
  rationale: 'On a bed that is too cold the part comes loose before the limit of the hot end matters.',
  source: `Machine profile, bed; filament profile, bedTemperature. Plastics for beds up to ${holdsCold} Cel hold without a heater, on tape or glue: common practice, no source.`,
  example: alike(
    'machine',
    { bad: '60 Cel', good: '100 Cel' },
    (value) => `
bed:
  temperatureLimit:
    - {value: ${value}, basis: claimed, source: plumstead-wren-sheet}`,
  ),
  *check(profile, { registry }) {
    const pairing = pairingOfTrial(profile.data, registry);
    const limit = pairing.machine && bedReach(pairing.machine);
    if (limit === null) return;
    const hit = settingHit(profile, limit) ?? windowHit(pairing, limit, registry);
    if (hit !== null) yield hit;
  },
};

function settingHit({ data }: Profile<'trial'>, limit: number): Hit | null {
  const set = data.conditions.bedTemperature;
  if (set === undefined || set <= limit) return null;
  return {
    path: ['conditions', 'bedTemperature'],
    part: 'value',
    blames: blamedBed(data.machine),
    message: `The bed is set to ${shown(set, 'temperature')}, but the bed of ${data.machine} only reaches ${shown(limit, 'temperature')}`,
    found: shown(set, 'temperature'),
    allowed: `up to ${shown(limit, 'temperature')}`,
    help: 'Check the digits and units of both.',
  };
}

function windowHit({ machine, filament }: TrialPairing, limit: number, registry: Registry): Hit | null {
  if (filament === null) return null;
  const windows = filament.bedTemperature.map(({ value }) => value);
  const coldest = Math.min(...windows.map(({ low }) => low));
  // A window that melts the part is found by its own rule.
  const bound = bedBound(filament, familiesOf(filament, registry));
  const sane = bound === null || windows.every(({ high }) => high <= bound.value);
  if (windows.length === 0 || coldest <= limit || !sane) return null;
  if (limit <= unheated && coldest <= holdsCold) return null;
  return {
    path: ['filament'],
    part: 'value',
    blames: blamedBed(machine?.id),
    message: `The filament needs a bed of ${shown(coldest, 'temperature')} or more, but the bed of ${machine?.id} only reaches ${shown(limit, 'temperature')}`,
    found: shown(coldest, 'temperature'),
    allowed: `up to ${shown(limit, 'temperature')}`,
    help: 'Check both profiles; if both are right, say in a field note how the part was held.',
  };
}

function blamedBed(machine: string | undefined): Blame[] {
  return machine === undefined
    ? []
    : [{ of: { kind: 'machine', id: machine }, path: ['bed', 'temperatureLimit'] }];
}
