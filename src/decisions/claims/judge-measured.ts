import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';
import type { Claim } from './claim.ts';
import {
  type ClaimEvidence,
  type ClaimVerdict,
  confirms,
  type Shortfall,
  shortfallOf,
} from './claim-verdict.ts';

/**
 * A claim against what was measured, the deciding evidence first. Where what was measured stays on the worse side but a
 * run ended before it was known, the claim is untested.
 */
export function judgeMeasured(claim: Claim, evidence: readonly ClaimEvidence[]): ClaimVerdict | null {
  const { lessIsBetter, statement } = claim;
  const { value: claimed } = statement;
  const [first] = evidence;
  if (first === undefined) return null;
  const found = foundText(first, claim.dimension);
  if (confirms(claimed, first, lessIsBetter)) {
    const within = lessIsBetter ? first.value > claimed : first.value < claimed;
    const text = within
      ? `${found}: the claim lies within the interval, so nothing speaks against it`
      : found;
    return { status: 'held', text, shortfall: null, evidence };
  }
  if (first.censored === (lessIsBetter ? 'below' : 'above')) {
    return { status: 'untested', text: `${found}, and the run ended there`, shortfall: null, evidence };
  }
  const shortfall = shortfallOf(claimed, first, lessIsBetter);
  return {
    status: 'notReached',
    text: `${found}, ${missText(shortfall, claim.dimension)} ${lessIsBetter ? 'above' : 'below'} the claim`,
    shortfall,
    evidence,
  };
}

/** `44.9 mm3/s measured (95 % interval 44.1..45.5 mm3/s)`. */
export function foundText({ value, interval, censored, how }: ClaimEvidence, dimension: Dimension): string {
  const number = shown(rounded(value, 3), dimension);
  if (censored === 'above') return `at least ${number} ${how}`;
  if (censored === 'below') return `less than ${number} ${how}`;
  return interval === null
    ? `${number} ${how}`
    : `${number} ${how} (95 % interval ${rangeText(interval, dimension)})`;
}

function missText({ value, range, share }: Shortfall, dimension: Dimension): string {
  // A share of a level in decibels means nothing.
  const parts = [
    ...(dimension === 'soundLevel' ? [] : [`${shownNumber(rounded(100 * share, 2))} %`]),
    ...(range === null ? [] : [`95 % interval ${rangeText(range, dimension)}`]),
  ];
  const number = shown(rounded(value, 3), dimension);
  return parts.length === 0 ? number : `${number} (${parts.join(', ')})`;
}

function rangeText(
  { low, high }: { readonly low: number; readonly high: number },
  dimension: Dimension,
): string {
  return shownRange({ low: rounded(low, 3), high: rounded(high, 3) }, dimension);
}
