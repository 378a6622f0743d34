import { widest } from '../knowledge/families.ts';
import { roomTemperature } from '../knowledge/melt-heat.ts';
import { nozzleEnvelope } from '../knowledge/nozzle-envelope.ts';
import { flowAtCoreTemperature, thermalDiffusivity } from '../physics/melt-zone.ts';
import type { Polymer } from '../registry/generated/documents.ts';
import { middle } from '../statistics/middle.ts';
import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  Millimetres,
  SquareMillimetresPerSecond,
} from '../units/canonical.ts';

/** What conduction into the filament lets a melt zone deliver, and what was assumed for it. */
export interface MeltCapacity {
  readonly flow: CubicMillimetresPerSecond;
  readonly diffusivity: SquareMillimetresPerSecond;
  /** Temperature that the core of the filament has on leaving: where the polymer begins to flow. */
  readonly coreTemperature: DegreesCelsius;
  readonly source: string;
}

/**
 * The flow, in mm³/s, at which the core of the filament leaves a melt zone of a length (mm) just warm enough to flow, the
 * properties of the family taken at the middle of what is published; null where they, or the way to the wall temperature
 * of the nozzle (°C), are not known. Source: conduction in a cylinder, Incropera et al., Fundamentals of Heat and Mass
 * Transfer, section 5.6; where a polymer begins to flow: its melting, or 80 K above its glass transition (common
 * practice, no source).
 */
export function meltCapacity(
  families: readonly Polymer[],
  nozzleTemperature: DegreesCelsius,
  meltZoneLength: Millimetres,
): MeltCapacity | null {
  const conductivity = widest(families, 'thermalConductivity');
  const density = widest(families, 'density');
  const heat = widest(families, 'specificHeatSolid');
  const core = nozzleEnvelope(families).lowest?.value ?? null;
  if (conductivity === null || density === null || heat === null || core === null) return null;
  if (core <= roomTemperature || core >= nozzleTemperature || meltZoneLength <= 0) return null;
  const diffusivity = thermalDiffusivity(middle(conductivity), middle(density), middle(heat));
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
