import { type CoveredValue, probabilityUpTo } from '../statistics/conformance.ts';
import type { Fraction } from '../units/canonical.ts';
import { formatNumber } from '../units/format-quantity.ts';
import { rounded } from '../units/rounded.ts';

/** The probability that a quantity meets what is claimed of it, between two ends that are equal where it is known. */
export interface Conformance {
  readonly low: Fraction;
  readonly high: Fraction;
}

/** Nearer to 0 or 1 nobody knows the shape of a distribution: what the tails would say is given as a bound (common practice, no source). */
const tail = 0.001;

/** What readers should know of probabilities. */
export const conformanceNote =
  'Probability: that the claim holds, by the evidence named first, which is taken as normal on either side of its value, with the ends of the 95 % interval as the 2.5 % and 97.5 % quantiles (JCGM 106:2012, 7; clause from memory); "at least" where a run ended before the limit.';

/** Probability of one side of a bound that trials give where they end before a limit; see `steps/crossing-result.ts`. */
export const beyondBound: Conformance = { low: 0.95, high: 1 };

/**
 * The probability that a quantity is at least what is claimed, or at most where less is better. With `orBetter` the
 * quantity is known to be this good or better, so that the probability is at least that; null where that says nothing.
 */
export function conformanceOf(
  claimed: number,
  value: CoveredValue,
  {
    lessIsBetter = false,
    orBetter = false,
  }: { readonly lessIsBetter?: boolean; readonly orBetter?: boolean } = {},
): Conformance | null {
  const upTo = probabilityUpTo(claimed, value);
  // Where nothing is known to be worse than the claim, to meet it exactly is to meet it.
  const isWorstMet = value.median === claimed && (lessIsBetter ? value.high : value.low) === claimed;
  const probability = isWorstMet ? 1 : lessIsBetter ? upTo : 1 - upTo;
  if (probability < tail) return orBetter ? null : { low: 0, high: tail };
  if (probability > 1 - tail) return { low: 1 - tail, high: 1 };
  return { low: probability, high: orBetter ? 1 : probability };
}

/** `34 %`, `at least 95 %`, `at most 0.1 %`. */
export function conformanceText({ low, high }: Conformance): string {
  if (low === 0) return `at most ${percent(high)}`;
  return high === 1 ? `at least ${percent(low)}` : percent(low);
}

/** To whole per cent in the middle, to tenths near the ends. */
function percent(share: Fraction): string {
  return `${formatNumber(100 * share, { decimals: Math.min(share, 1 - share) < 0.02 ? 1 : 0 })} %`;
}

/** A probability for programs, to four digits. */
export function conformanceFacts({ low, high }: Conformance): Conformance {
  return { low: rounded(low, 4), high: rounded(high, 4) };
}
