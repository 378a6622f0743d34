import { capitalised, wordsOf } from '../../text/words.ts';
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
      ? ['No setting was repeated: two or three specimens per setting show how much they differ.']
      : []),
  ];
}

function endWarning(
  { quantity, censored, interval }: ReducedResult,
  steps: readonly SeriesStep[],
  shown: (value: number) => string,
): string[] {
  const name = capitalised(wordsOf(quantity));
  const [first = Number.NaN, last = Number.NaN] = [steps[0]?.x, steps.at(-1)?.x];
  if (censored === 'above')
    return [`${name} is beyond the highest setting, ${shown(last)}: add higher settings to find it.`];
  if (censored === 'below')
    return [`${name} is below the lowest setting, ${shown(first)}: add lower settings to find it.`];
  return interval.low === first || interval.high === last
    ? [
        `The interval of the ${wordsOf(quantity)} reaches the end of the tested range: add settings beyond it.`,
      ]
    : [];
}

function widthWarning(
  { quantity, value, interval: { low, high } }: ReducedResult,
  shown: (value: number) => string,
): string[] {
  if (low === null || high === null || high - low <= largestRelativeWidth * Math.abs(value)) return [];
  return [
    `The interval of the ${wordsOf(quantity)} is wide: add settings between ${shown(low)} and ${shown(high)}.`,
  ];
}
