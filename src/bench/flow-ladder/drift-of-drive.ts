// The delivered share falls a little even before the onset, since the drive slips more against a higher pressure:
// half a hundredth on the way to the limit, give or take one (common practice, no source).
export const driftMean = 0.005;
export const driftDeviation = 0.008;

/** How far the gain of a scale drifts over a run: its standard deviation (common practice, no source). */
const scaleDeviation = 0.004;

/** What of a drift counts as missing at the limit. */
export interface DriftOfDrive {
  readonly mean: (drift: number) => number;
  /** Standard deviation, where a fit leaves the drift open by a variance. */
  readonly spread: (driftVariance: number) => number;
}

/**
 * A drift of the scale looks like one of the drive where the flows rise with the time of the run, but takes nothing
 * from the limit: how much of a drift is the drive's, given how closely the flows follow the run, 0 to 1 (product of
 * two normal densities).
 */
export function driftOfDrive(orderByFlow: number): DriftOfDrive {
  const scale = (scaleDeviation * orderByFlow) ** 2;
  const scaleShare = scale / (scale + driftDeviation ** 2);
  const open = driftDeviation * Math.sqrt(scaleShare);
  return {
    mean: (drift) => drift - scaleShare * (drift - driftMean),
    spread: (driftVariance) => Math.hypot((1 - scaleShare) * Math.sqrt(driftVariance), open),
  };
}
