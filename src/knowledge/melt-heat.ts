import { type Heating, heatPerVolume } from '../physics/melt-power.ts';
import { thermalDiffusivity } from '../physics/melt-zone.ts';
import type { DegreesCelsius, SquareMillimetresPerSecond } from '../units/canonical.ts';
import { shown, shownNumber } from '../units/wording.ts';
import { familyNames, widest } from './families.ts';
import type { FlowLimit } from './flow-limits.ts';

/** Room in which machines stand (common practice, no source). */
export const roomTemperature: DegreesCelsius = 25;
/** Where the family does not say: the lightest melt, the smallest specific heat, the coldest usual nozzle. */
const unknown = { density: 0.0009, specificHeat: 1.7, nozzleTemperature: 190, diffusivity: 0.17 };
/** Fibres and powders carry heat: twice the diffusivity (common practice, no source). */
const filledFactor = 2;

/**
 * Thermal diffusivity, in mm²/s, that solid plastics without fillers have. Source: Crawford, Plastics Engineering (1998),
 * Table 1.8, up to 0.17; polyethylene of high density and poly(phenylene sulfide) lie at 0.19 to 0.28 by their conductivity, density
 * and specific heat in Mark (ed.), Physical Properties of Polymers Handbook (from memory).
 */
export const unfilledSolids = { low: 0.07, high: 0.28 };

/** The least heat that a flow limit needs, and what was assumed for it. */
interface LeastHeat {
  /** J/mm³ */
  readonly perVolume: number;
  readonly assumptions: string;
  readonly source: string | null;
}

/** The least heat, in J, that a cubic millimetre of the feedstock takes up: everything unknown taken as favourable. */
export function leastHeat({
  families,
  nozzleTemperature,
}: Pick<FlowLimit, 'families' | 'nozzleTemperature'>): LeastHeat {
  const density = widest(families, 'density');
  const heat = widest(families, 'specificHeatMelt');
  const heating: Heating = {
    density: density?.low ?? unknown.density,
    specificHeat: heat?.low ?? unknown.specificHeat,
    nozzleTemperature:
      nozzleTemperature ?? widest(families, 'nozzleTemperature')?.low ?? unknown.nozzleTemperature,
    ambientTemperature: roomTemperature,
    crystallinity: 0,
    heatOfFusion: 0,
  };
  const material = families.length === 0 ? 'a feedstock of little heat' : familyNames(families);
  return {
    perVolume: heatPerVolume(heating),
    assumptions: `${material}, ${shown(heating.density, 'density')}, ${shownNumber(heating.specificHeat)} J/g/K as a melt, from ${roomTemperature} Cel to ${shown(heating.nozzleTemperature, 'temperature')}, no crystals, no losses`,
    source: heat?.source ?? null,
  };
}

/** The highest diffusivity, in mm²/s, that the feedstock of a flow limit can have. */
export function highestDiffusivity({
  families,
  filament,
}: Pick<FlowLimit, 'families' | 'filament'>): SquareMillimetresPerSecond {
  const conductivity = widest(families, 'thermalConductivity');
  const density = widest(families, 'density');
  const heat = widest(families, 'specificHeatSolid');
  const unfilled =
    conductivity !== null && density !== null && heat !== null
      ? thermalDiffusivity(conductivity.high, density.low, heat.low)
      : unknown.diffusivity;
  return filament?.fillers === undefined ? unfilled : filledFactor * unfilled;
}
