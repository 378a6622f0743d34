import type { Dimension } from '../../units/dimension.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import type { ReducedResult } from '../reduction.ts';
import type { SeriesStep } from './step-series.ts';

const largestRelativeWidth = 0.2;

/** What a reader should know of a series before relying on the crossings found in it. */
export function seriesWarnings(
  steps: readonly SeriesStep[],
  results: readonly ReducedResult[],
  dimension: Dimension,
): string[] {
  const shown = (value: number) => formatQuantity(value, dimension, { significantDigits: 4 });
  return [
    ...results.flatMap((result) => endWarning(result, steps, shown)),
    ...results.flatMap((result) => widthWarning(result, shown)),
    ...(steps.every(({ count }) => count === 1)
      ? ['No setting was repeated: two or three specimens each show how far they differ.']
      : []),
  ];
}

function endWarning(
  { quantity, censored, interval }: ReducedResult,
  steps: readonly SeriesStep[],
  shown: (value: number) => string,
): string[] {
  const [first = Number.NaN, last = Number.NaN] = [steps[0]?.x, steps.at(-1)?.x];
  if (censored === 'above')
    return [`${quantity} lies beyond the highest setting, ${shown(last)}: go on to find it.`];
  if (censored === 'below')
    return [`${quantity} lies below the lowest setting, ${shown(first)}: begin lower to find it.`];
  return interval.low === first || interval.high === last
    ? [`The interval of ${quantity} reaches the end of what was tested: go further on that side.`]
    : [];
}

function widthWarning(
  { quantity, value, interval: { low, high } }: ReducedResult,
  shown: (value: number) => string,
): string[] {
  if (low === null || high === null || high - low <= largestRelativeWidth * Math.abs(value)) return [];
  return [`The interval of ${quantity} is wide: add settings between ${shown(low)} and ${shown(high)}.`];
}
