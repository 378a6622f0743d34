import { chiSquaredTail } from './chi-squared.ts';
import { normalQuantile } from './normal-quantile.ts';

/** A quantity by its median and the ends of its 95 % coverage interval, in one unit. */
export interface CoveredValue {
  readonly median: number;
  readonly low: number;
  readonly high: number;
}

/** Half of a 95 % interval in standard deviations of a normal distribution: 1.96. */
const expansion = normalQuantile(0.975);

/**
 * Probability that a quantity lies at or below an upper limit. It is taken as normal on either side of its median, with
 * the ends of the interval as its 2.5 % and 97.5 % quantiles; where these are equally far away that is the normal
 * distribution. That it lies at or above a lower limit has the rest of the probability.
 * Source: JCGM 106:2012, 7.2 and 7.3, conformance probability (clauses from memory).
 */
export function probabilityUpTo(limit: number, { median, low, high }: CoveredValue): number {
  const halfWidth = limit < median ? median - low : high - median;
  if (halfWidth > 0) return normalDistribution((expansion * (limit - median)) / halfWidth);
  return limit < median ? 0 : 1;
}

/** P(Z <= z) of the standard normal distribution, from chi-squared with one degree of freedom (Abramowitz and Stegun, 26.4.21). */
function normalDistribution(z: number): number {
  const tail = chiSquaredTail(z * z, 1) / 2;
  return z < 0 ? tail : 1 - tail;
}
