import { trialLimit } from '../../evidence/trial-limit.ts';
import { familiesOf, widest } from '../../knowledge/families.ts';
import { blamedAtHotEnd } from '../../knowledge/flow-limits.ts';
import { roomTemperature, unfilledSolids } from '../../knowledge/melt-heat.ts';
import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import {
  residenceFourier,
  type SquareMillimetresPerSecond,
  thermalDiffusivity,
} from '../../physics/melt-zone.ts';
import type { Polymer } from '../../registry/generated/documents.ts';
import type { Blame } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { highestStated } from '../../registry/stated.ts';
import { middle } from '../../statistics/middle.ts';
import type { Millimetres, Range } from '../../units/canonical.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** At 0.2 the core of a filament has taken up half of the step, at 1 all but half a percent of it. */
const largestFourier = 1;
/**
 * In mm and MPa·s: through finer nozzles the force of the drive sets the limit, and not the heat. The pressure goes with the viscosity
 * and the inverse cube of the bore (Hagen-Poiseuille), so a melt that is thicker than usual needs a wider one.
 */
const finestNozzle = { diameter: 0.4, viscosity: 300e-6 };
/** Mean viscosity, in MPa·s, of families that say none and soften above a temperature, in °C (common practice, no source). */
const stiffFamily = { glassTransition: 130, viscosity: 500e-6 };
/** In mm²/s, where the family does not say: the middle of Crawford, Plastics Engineering (1998), Table 1.8. */
const usualDiffusivity = 0.1;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A hot end reaches its flow limit before the melt zone has heated the filament through.',
  rationale:
    'If the filament is hot right through, heat is not the limit: flows or units are wrong, or something is blocked.',
  source:
    'Conduction in a cylinder: Incropera et al., Fundamentals of Heat and Mass Transfer, section 5.6; Mackay et al., J. Rheology 61 (2017) 229-236. Limits in use lie at 0.2 to 0.5 (common practice, no source).',
  formula: `Fo = pi a L/Q <= ${largestFourier}, a diffusivity from the middles of the family's ranges, L melt zone, Q limit; rigid unfilled polymers, nozzles from d = ${finestNozzle.diameter} mm, of melts thicker than ${1e6 * finestNozzle.viscosity} Pa.s from d (eta/${1e6 * finestNozzle.viscosity} Pa.s)^(1/3)`,
  example: {
    kind: 'trial',
    copied: true,
    bad: `
id: wren-clover-petg-245-fine
nozzle: hs-0.4${ladder(allFlows, { unit: 'cm3/h', apart: 0.002 })}
events:
  - {event: halted, commandedFlow: 26 cm3/h}`,
    good: `
id: wren-clover-petg-245-fine
nozzle: hs-0.4${ladder(allFlows, { apart: 0.002 })}`,
  },
  *check(profile, context) {
    const zone = meltZoneOf(profile, context.registry);
    const limit = zone && trialLimit(profile, context);
    if (zone === null || limit === null || limit.high === Number.POSITIVE_INFINITY) return;
    const fourier = residenceFourier(zone.diffusivity, zone.length, limit.value);
    if (fourier <= largestFourier) return;
    const expected = (zone.diffusivity * Math.PI * zone.length) / largestFourier;
    yield {
      path: ['observations'],
      part: 'key',
      blames: zone.blames,
      message: `At ${shown(limit.value, 'volumeFlow')} the filament leaves a melt zone of ${shown(zone.length, 'length')} hot to its core (Fourier number ${shownNumber(Number(fourier.toPrecision(2)))}, assumed: diffusivity ${shownNumber(Number(zone.diffusivity.toPrecision(2)))} mm2/s), and yet this is the limit`,
      found: shown(limit.value, 'volumeFlow'),
      allowed: `from ${shown(expected, 'volumeFlow')}`,
      help: 'Check the unit of the flows and the length of the melt zone; if they are right, look for a blocked nozzle or a slipping drive.',
    };
  },
};

interface KnownZone {
  readonly length: Millimetres;
  readonly diffusivity: SquareMillimetresPerSecond;
  readonly blames: Blame[];
}

/** The melt zone that a rigid, unfilled filament was pushed through by heat and not by force; null where that is not known. */
function meltZoneOf({ data }: Profile<'trial'>, registry: Registry): KnownZone | null {
  const { machine, hotEnd, nozzle, filament } = pairingOfTrial(data, registry);
  const length = highestStated(hotEnd?.meltZoneLength);
  if (machine === null || hotEnd === null || length === null || nozzle === null) return null;
  if (filament === null || filament.fillers !== undefined) return null;
  const families = familiesOf(filament, registry);
  const glass = widest(families, 'glassTransition');
  // What is soft at room temperature buckles before it is pushed to the limit of the heat.
  if (glass === null || glass.low < roomTemperature) return null;
  if (nozzle.diameter < finestFor(widest(families, 'meltViscosity'), glass)) return null;
  const blames = blamedAtHotEnd({ machine, hotEnd }, 'meltZoneLength');
  return { length, diffusivity: middleDiffusivity(families), blames };
}

function middleDiffusivity(families: readonly Polymer[]): SquareMillimetresPerSecond {
  const conductivity = widest(families, 'thermalConductivity');
  const density = widest(families, 'density');
  const heat = widest(families, 'specificHeatSolid');
  if (conductivity === null || density === null || heat === null) return usualDiffusivity;
  const diffusivity = thermalDiffusivity(middle(conductivity), middle(density), middle(heat));
  // Figures that no plastic has are a finding of their own at the family, and say nothing about its trials.
  return diffusivity >= unfilledSolids.low && diffusivity <= unfilledSolids.high
    ? diffusivity
    : usualDiffusivity;
}

/** The finest nozzle, in mm, through which heat and not force sets the limit. */
function finestFor(viscosity: Range | null, glass: Range): Millimetres {
  const unknown = glass.low >= stiffFamily.glassTransition ? stiffFamily.viscosity : finestNozzle.viscosity;
  const thickness = (viscosity === null ? unknown : middle(viscosity)) / finestNozzle.viscosity;
  return finestNozzle.diameter * Math.max(1, Math.cbrt(thickness));
}
