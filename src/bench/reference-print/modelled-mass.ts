import { isFoamed } from '../../knowledge/families.ts';
import { features } from '../../knowledge/feature.ts';
import { beadArea } from '../../physics/bead.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import type { CubicMillimetres, Grams } from '../../units/canonical.ts';
import type { JobPaths } from './job-plan.ts';

/** Volume of all beads of a job, in mm³. Source: V = sum(A l). */
export function jobVolume(job: JobPaths): CubicMillimetres {
  return features.reduce((volume, feature) => {
    const path = job.features[feature];
    if (path === undefined || !('layerHeight' in path)) return volume;
    return volume + path.pathLength * beadArea(path.layerHeight, path.lineWidth);
  }, 0);
}

/**
 * Mass, in g, of the beads of a job, that of the reference print unless given, in the filament of the trial: m = rho V, mass
 * balance. Null for another method, where job, filament or its density are not known, for a print that does not say how it
 * was set, and may have been printed otherwise, and for a filament that foams, which fills its beads with less.
 */
export function modelledPrintMass(
  registry: Registry,
  trial: Trial,
  job: JobPaths | undefined = registry.job.get(trial.job ?? '')?.data,
): Grams | null {
  const filament = registry.filament.get(trial.filament)?.data;
  if (trial.method !== 'referencePrint' || trial.settings === undefined) return null;
  if (job === undefined || filament === undefined) return null;
  const { id, polymer } = filament;
  const density = chooseStatement(filament.density, {
    ...{ filament: id, polymer },
    ...(trial.machine !== undefined && { machine: trial.machine }),
    ...(trial.nozzle !== undefined && { nozzle: trial.nozzle }),
  });
  const mass = isFoamed(filament) || density === null ? 0 : jobVolume(job) * density.value;
  return mass > 0 && Number.isFinite(mass) ? mass : null;
}
