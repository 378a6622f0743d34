import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import type { ReducedResult } from '../reduction.ts';

/**
 * The result that draws of a crossing leave, with -Infinity and Infinity for draws before the first and beyond the
 * last setting. Where most draws lie outside, it is censored: its value is then the nearest setting that is on the
 * other side of the crossing with a probability of 95 %. The interval does not reach beyond what was tested.
 */
export function crossingResult(
  quantity: string,
  dimension: Dimension,
  draws: ArrayLike<number>,
  x: readonly number[],
): ReducedResult {
  const [first = Number.NaN, last = Number.NaN] = [x[0], x.at(-1)];
  const beyond = last - first || 1;
  const [low = 0, fifth = 0, median = 0, ninetyFifth = 0, high = 0] = drawnQuantiles(
    Float64Array.from(draws, (draw) => Math.min(last + beyond, Math.max(first - beyond, draw))),
    [0.025, 0.05, 0.5, 0.95, 0.975],
  );
  const open = { low: null, high: null, coverage: 0.95 } as const;
  if (median > last) {
    const value = x.findLast((at) => at <= fifth) ?? first;
    return { quantity, dimension, value, interval: open, censored: 'above' };
  }
  if (median < first) {
    const value = x.find((at) => at >= ninetyFifth) ?? last;
    return { quantity, dimension, value, interval: open, censored: 'below' };
  }
  return {
    quantity,
    dimension,
    value: rounded(median),
    interval: { low: rounded(Math.max(first, low)), high: rounded(Math.min(last, high)), coverage: 0.95 },
    censored: null,
  };
}

/** The limit of a plot, or none for a censored result. */
export function plottedLimits(
  results: readonly ReducedResult[],
): { value: number; low: number; high: number }[] {
  return results.flatMap(({ value, interval: { low, high } }) =>
    low === null || high === null ? [] : [{ value, low, high }],
  );
}
