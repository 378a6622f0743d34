import type { DecisionRule } from '../../knowledge/decision-rule.ts';
import { basisWords } from '../../knowledge/origin.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';
import type { Claim } from './claim.ts';
import {
  betweenStatus,
  type ClaimEvidence,
  type ClaimVerdict,
  conformanceBy,
  holds,
  isCompatible,
  type Shortfall,
  shortfallOf,
} from './claim-verdict.ts';

/**
 * A claim against what was measured, the deciding evidence first, by a decision rule. Where what was measured stays on the
 * worse side but a run ended before it was known, the claim is untested.
 */
export function judgeMeasured(
  claim: Claim,
  evidence: readonly ClaimEvidence[],
  rule: DecisionRule,
): ClaimVerdict | null {
  const { lessIsBetter, statement, dimension } = claim;
  const { value: claimed } = statement;
  const [first] = evidence;
  if (first === undefined) return null;
  const found = foundText(first, dimension);
  const known = { conformance: conformanceBy(claimed, first, lessIsBetter), evidence };
  if (holds(claimed, first, lessIsBetter)) return { status: 'held', text: found, shortfall: null, ...known };
  if (isCompatible(claimed, first, lessIsBetter)) {
    const status = betweenStatus(claimed, first, lessIsBetter, rule);
    const text = `${found}: ${doubtTexts[status](first)}`;
    const shortfall = status === 'rejected' ? shortfallOf(claimed, first, lessIsBetter) : null;
    return { status, text, shortfall, ...known };
  }
  if (first.censored === (lessIsBetter ? 'below' : 'above')) {
    return { status: 'untested', text: `${found}, and the run ended there`, shortfall: null, ...known };
  }
  const shortfall = shortfallOf(claimed, first, lessIsBetter);
  return {
    status: 'notReached',
    text: `${found}: ${missText(shortfall, dimension)} ${lessIsBetter ? 'above' : 'below'} the claim`,
    shortfall,
    ...known,
  };
}

/** Why what speaks for a claim, or against it, does not settle it. */
const doubtTexts = {
  accepted: () =>
    'the value meets the claim, but the interval reaches beyond it, so it is accepted and not held',
  rejected: () =>
    'the value misses the claim, but the interval reaches it, so it is rejected though it may hold',
  notContradicted: openText,
} as const;

function openText({ how, interval }: ClaimEvidence): string {
  if (how === 'set') return 'set, not measured, so it does not show that the claim is held';
  return interval === null
    ? 'there is no interval, so it does not show that the claim is held'
    : 'the claim lies within the interval, so nothing speaks against it, and nothing shows that it is held';
}

/** `44.9 mm3/s measured, 95 % interval 44.1..45.5 mm3/s`. */
export function foundText(
  { value, interval, censored, how, simulated }: ClaimEvidence,
  dimension: Dimension,
): string {
  const found = basisWords(how, simulated);
  const number = shown(rounded(value, 3), dimension);
  if (censored === 'above') return `at least ${number} ${found}`;
  if (censored === 'below') return `less than ${number} ${found}`;
  return interval === null
    ? `${number} ${found}`
    : `${number} ${found}, 95 % interval ${rangeText(interval, dimension)}`;
}

function missText({ value, range, share }: Shortfall, dimension: Dimension): string {
  const apart = dimension === 'temperature' ? 'temperatureDifference' : dimension;
  // A share of a level in decibels, or of a temperature in degrees Celsius, means nothing.
  const parts = [
    ...(isOnScale(dimension) ? [] : [`${shownNumber(rounded(100 * share, 2))} %`]),
    ...(range === null ? [] : [`95 % interval ${rangeText(range, apart)}`]),
  ];
  const number = shown(rounded(value, 3), apart);
  return parts.length === 0 ? number : `${number} (${parts.join(', ')})`;
}

const isOnScale = (dimension: Dimension) => dimension === 'soundLevel' || dimension === 'temperature';

function rangeText(
  { low, high }: { readonly low: number; readonly high: number },
  dimension: Dimension,
): string {
  return shownRange({ low: rounded(low, 3), high: rounded(high, 3) }, dimension);
}
