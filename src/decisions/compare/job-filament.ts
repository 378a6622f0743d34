import type { JobPaths } from '../../bench/reference-print/job-plan.ts';
import { jobVolume } from '../../bench/reference-print/modelled-mass.ts';
import { features } from '../../knowledge/feature.ts';
import { weakerBasis } from '../../registry/statement.ts';
import type { Grams, Money } from '../../units/canonical.ts';
import type { Known } from './job-estimate.ts';
import type { PairingFigures } from './pairing-figures.ts';

/** Filament that a job takes, and what it costs; null where density or price are not known. */
interface JobFilament {
  readonly mass: Known<Grams> | null;
  readonly cost: Known<Money> | null;
}

/** Mass of the printed paths of a job, and their share of the price of a spool. Source: m = rho sum(A l), mass balance. */
export function jobFilament(
  { density, spoolMass, spoolPrice: price }: PairingFigures,
  job: JobPaths,
): JobFilament {
  if (density === null) return { mass: null, cost: null };
  const mass = { ...density, value: jobVolume(job) * density.value };
  if (price === null || spoolMass === null || spoolMass <= 0) return { mass, cost: null };
  const { amount, currency } = price.value;
  const value = { amount: (amount * mass.value) / spoolMass, currency };
  const isSimulated = price.isSimulated || density.isSimulated;
  return { mass, cost: { value, basis: weakerBasis(price.basis, density.basis), isSimulated } };
}

/** What speaks against the beads of a job on a nozzle. Source: common practice, no source. */
export function beadWarnings({ nozzle, bore }: PairingFigures, job: JobPaths): string[] {
  const beads = features.flatMap((feature) => {
    const path = job.features[feature];
    return path !== undefined && 'layerHeight' in path ? [path] : [];
  });
  const narrow = beads.find(({ lineWidth }) => lineWidth < bore);
  const tall = beads.find(({ layerHeight }) => layerHeight > 0.8 * bore);
  return [
    ...(narrow === undefined
      ? []
      : [`Lines of ${narrow.lineWidth} mm are narrower than the bore of nozzle ${nozzle}, ${bore} mm.`]),
    ...(tall === undefined
      ? []
      : [
          `Layers of ${tall.layerHeight} mm are higher than 80 % of the bore of nozzle ${nozzle}, ${bore} mm.`,
        ]),
  ];
}
