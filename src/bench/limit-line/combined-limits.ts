import { chiSquaredTail } from '../../statistics/chi-squared.ts';
import { leastSquares } from '../../statistics/least-squares.ts';
import { normalFactor, scatterOf } from '../../statistics/scatter.ts';
import type { LimitPoint } from './limit-line.ts';

/** What all trials at one nozzle temperature say together. */
export interface CombinedLimit extends LimitPoint {
  /** Number of trials. */
  readonly trials: number;
  /**
   * Probability that trials that agree would scatter so far by chance; null for a single one. Below 5 % they are not
   * combined: the lowest limit stands for them.
   */
  readonly agreement: number | null;
}

/** Trials whose scatter is less probable than this do not agree. */
export const leastAgreement = 0.05;

/**
 * One limit at each nozzle temperature, coldest first: the weighted mean of trials that agree by the chi-squared test of
 * their limits (M. G. Cox, Metrologia 39 (2002) 589, procedure A), with its 95 % interval, widened where they scatter by
 * more than their own intervals explain (see `scatterOf`); else the lowest of them, with its own.
 */
export function combinedLimits(points: readonly LimitPoint[]): CombinedLimit[] {
  const temperatures = [...new Set(points.map(({ temperature }) => temperature))].sort((a, b) => a - b);
  return temperatures.map((temperature) =>
    combined(points.filter((point) => point.temperature === temperature)),
  );
}

function combined(points: readonly LimitPoint[]): CombinedLimit {
  const [first] = points;
  const fit = leastSquares(
    points.map(() => [1]),
    points.map(({ limit }) => limit),
    points.map(({ low, high }) => ((2 * normalFactor) / (high - low)) ** 2),
  );
  const temperature = first?.temperature ?? Number.NaN;
  if (first !== undefined && points.length === 1) return { ...first, trials: 1, agreement: null };
  if (!fit.ok) return { ...unknown, temperature, trials: points.length };
  const agreement = chiSquaredTail(fit.value.residualSquares, points.length - 1);
  if (agreement < leastAgreement) return { ...lowestOf(points), trials: points.length, agreement };
  const [limit = Number.NaN] = fit.value.coefficients;
  const { widening, coverageFactor } = scatterOf(fit.value);
  const half = coverageFactor * widening * Math.sqrt(fit.value.cofactors[0]?.[0] ?? Number.NaN);
  return { temperature, limit, low: limit - half, high: limit + half, trials: points.length, agreement };
}

const unknown = { limit: Number.NaN, low: Number.NaN, high: Number.NaN, agreement: null };

function lowestOf(points: readonly LimitPoint[]): LimitPoint {
  return points.reduce((lowest, point) => (point.limit < lowest.limit ? point : lowest));
}
