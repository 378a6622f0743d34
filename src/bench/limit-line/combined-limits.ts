import { leastSquares } from '../../statistics/least-squares.ts';
import { normalFactor, scatterOf } from '../../statistics/scatter.ts';
import type { LimitPoint } from './limit-line.ts';

/** What all trials at one nozzle temperature say together. */
export interface CombinedLimit extends LimitPoint {
  /** Number of trials. */
  readonly trials: number;
}

/**
 * The weighted mean of the limits at each nozzle temperature, coldest first, with its 95 % interval, widened where the
 * trials scatter by more than their own intervals explain (see `scatterOf`).
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
  if (first !== undefined && points.length === 1) return { ...first, trials: 1 };
  if (!fit.ok)
    return { temperature, limit: Number.NaN, low: Number.NaN, high: Number.NaN, trials: points.length };
  const [limit = Number.NaN] = fit.value.coefficients;
  const { widening, coverageFactor } = scatterOf(fit.value);
  const half = coverageFactor * widening * Math.sqrt(fit.value.cofactors[0]?.[0] ?? Number.NaN);
  return { temperature, limit, low: limit - half, high: limit + half, trials: points.length };
}
