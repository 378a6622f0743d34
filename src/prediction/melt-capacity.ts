import { widest } from '../knowledge/families.ts';
import { roomTemperature } from '../knowledge/melt-heat.ts';
import { nozzleEnvelope } from '../knowledge/nozzle-envelope.ts';
import { meanSpecificHeat } from '../physics/melt-power.ts';
import { flowAtCoreTemperature, thermalDiffusivity } from '../physics/melt-zone.ts';
import type { Polymer } from '../registry/generated/documents.ts';
import { middle } from '../statistics/middle.ts';
import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  Fraction,
  JoulesPerGramKelvin,
  Millimetres,
  SquareMillimetresPerSecond,
} from '../units/canonical.ts';

/** What conduction into the filament lets a melt zone deliver, and what was assumed for it. */
export interface MeltCapacity {
  readonly flow: CubicMillimetresPerSecond;
  /** With the mean specific heat up to the nozzle temperature. */
  readonly diffusivity: SquareMillimetresPerSecond;
  /** Temperature that the core of the filament has on leaving: where the polymer begins to flow. */
  readonly coreTemperature: DegreesCelsius;
  readonly source: string;
}

/** Share of crystals in the feedstock of a semi-crystalline family (common practice, no source). */
const crystallinity: Fraction = 0.35;

/**
 * The flow, in mm³/s, at which the core of the filament leaves a melt zone of a length (mm) just warm enough to flow, the
 * properties of the family taken at the middle of what is published; null where they, or the way to the wall temperature
 * of the nozzle (°C), are not known. The specific heat is the mean between room and nozzle, over the glass transition or the
 * fusion of the crystals: against a cylinder whose enthalpy follows its temperature, the flow is within 5 % for amorphous
 * families and within 15 % for semi-crystalline ones, whose core begins to melt. Source: conduction
 * in a cylinder, Incropera et al., Fundamentals of Heat and Mass Transfer, section 5.6; where a polymer begins to flow: its
 * melting, or 80 K above its glass transition (common practice, no source).
 */
export function meltCapacity(
  families: readonly Polymer[],
  nozzleTemperature: DegreesCelsius,
  meltZoneLength: Millimetres,
): MeltCapacity | null {
  const conductivity = widest(families, 'thermalConductivity');
  const density = widest(families, 'density');
  const heat = heatUpTo(families, nozzleTemperature);
  const core = nozzleEnvelope(families).lowest?.value ?? null;
  if (conductivity === null || density === null || heat === null || core === null) return null;
  if (core <= roomTemperature || core >= nozzleTemperature || meltZoneLength <= 0) return null;
  const diffusivity = thermalDiffusivity(middle(conductivity), middle(density), heat);
  const zone = {
    wallTemperature: nozzleTemperature,
    entryTemperature: roomTemperature,
    diffusivity,
    heatedLength: meltZoneLength,
  };
  return {
    flow: flowAtCoreTemperature(zone, core),
    diffusivity,
    coreTemperature: core,
    source: conductivity.source,
  };
}

/** Mean specific heat between room and nozzle; that of the solid where the melt or the transition is not known. */
function heatUpTo(families: readonly Polymer[], nozzle: DegreesCelsius): JoulesPerGramKelvin | null {
  const solid = widest(families, 'specificHeatSolid');
  const melt = widest(families, 'specificHeatMelt');
  const isAmorphous = families.every(({ structure }) => structure === 'amorphous');
  const transition = widest(families, isAmorphous ? 'glassTransition' : 'melting');
  if (solid === null || melt === null || transition === null) return solid && middle(solid);
  const at = middle(transition);
  if (at <= roomTemperature || at >= nozzle) return middle(solid);
  const crystals = isAmorphous ? null : widest(families, 'heatOfFusion');
  const fusion = crystals === null ? 0 : crystallinity * middle(crystals);
  const heat = { solid: middle(solid), melt: middle(melt), transition: at, fusion };
  return meanSpecificHeat(heat, roomTemperature, nozzle);
}
