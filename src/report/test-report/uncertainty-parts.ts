import { methodOf } from '../../bench/methods.ts';
import { type ReductionInputs, reduceInputs } from '../../bench/reduce-trial.ts';
import type { ReducedResult } from '../../bench/reduction.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';

/** What adds to the uncertainty of a result. */
interface UncertaintyPart {
  readonly name: string;
  /** As the trial states it, or that it does not. */
  readonly stated: string;
  /** What the interval of the first result is without half of it; empty where that cannot be said. */
  readonly effect: string;
}

const instrument = /resolution|accuracy|uncertainty|instrument/i;

/**
 * What contributes to the uncertainty of a trial's first result: each instrument with what it states, and how much narrower the
 * interval were if it were twice as good, found by reducing again; the rest is in the readings.
 */
export function uncertaintyParts(
  inputs: ReductionInputs,
  result: ReducedResult | undefined,
): UncertaintyPart[] {
  const [name, observations, run] = inputs;
  const width = result === undefined ? null : widthOf(result);
  const instruments = Object.entries(methodOf(name).facts).filter(([key]) => instrument.test(key));
  return [
    ...instruments.map(([key, fact]): UncertaintyPart => {
      const value = run[key];
      if (typeof value !== 'number' || typeof fact.form === 'string' || !('dimension' in fact.form))
        return { name: fact.what, stated: 'not stated', effect: '' };
      const better = reduceInputs([name, observations, { ...run, [key]: value / 2 }]);
      const first = better.ok ? better.value.results[0] : undefined;
      return {
        name: fact.what,
        stated: formatQuantity(
          value,
          fact.form.dimension,
          fact.form.dimension === 'ratio' ? { unit: '%' } : {},
        ),
        effect: effectText(width, first === undefined ? null : widthOf(first)),
      };
    }),
    {
      name: 'repeatability of the readings, and what they leave open between the steps',
      stated: 'from the readings themselves',
      effect: '',
    },
  ];
}

function widthOf({ interval: { low, high } }: ReducedResult): number | null {
  return low === null || high === null ? null : high - low;
}

function effectText(width: number | null, better: number | null): string {
  if (width === null || better === null || width === 0) return '';
  const share = (100 * (width - better)) / width;
  if (Math.abs(share) < 1) return 'the interval would be about the same';
  return `the interval would be ${formatNumber(Math.abs(share), { decimals: 0 })} % ${share > 0 ? 'narrower' : 'wider'}`;
}
