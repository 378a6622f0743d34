import type { Censoring } from '../../bench/reduction.ts';
import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import type { EvidenceFault } from '../../evidence/standing.ts';
import { beyondBound, type Conformance, conformanceOf } from '../../knowledge/conformance.ts';
import type { DecisionRule } from '../../knowledge/decision-rule.ts';
import { middle } from '../../statistics/middle.ts';
import type { DegreesCelsius, Fraction, Range } from '../../units/canonical.ts';
import type { Claim } from './claim.ts';

/** What has become of a claim. */
const claimStatuses = [
  'held',
  'accepted',
  'notContradicted',
  'rejected',
  'notReached',
  'notReachable',
  'untested',
] as const;

/** What has become of a claim. */
export type ClaimStatus = (typeof claimStatuses)[number];

/** A status in words. */
export const claimStatusText: Readonly<Record<ClaimStatus, string>> = {
  held: 'held',
  accepted: 'accepted',
  notContradicted: 'not contradicted',
  rejected: 'rejected',
  notReached: 'not reached',
  notReachable: 'not reachable in principle',
  untested: 'untested',
};

/** What was found, and under which conditions; every number in the canonical unit of the claim. */
export interface ClaimEvidence {
  readonly value: number;
  /** The 95 % interval; null where there is none. */
  readonly interval: Range | null;
  readonly censored: Censoring | null;
  /** Whether the value is what the bench adopted, which need not be the median of what was measured. */
  readonly isAdopted?: boolean;
  /** What the machine was only set to was not measured. */
  readonly how: 'measured' | 'set';
  /** Whether the readings were simulated. */
  readonly simulated: boolean;
  readonly trial: string | null;
  readonly date: string | null;
  readonly nozzle: string | null;
  readonly filament: string | null;
  readonly nozzleTemperature: DegreesCelsius | null;
  /** What is wrong with it, acknowledged or not. */
  readonly faults: readonly EvidenceFault[];
}

/** By how much a claim is missed, in the unit of the claim and as a share of it, with the ends that the interval leaves. */
export interface Shortfall {
  readonly value: number;
  readonly range: Range | null;
  readonly share: Fraction;
}

/** What has become of a claim, and by which evidence. */
export interface ClaimVerdict {
  readonly status: ClaimStatus;
  /** One sentence with the numbers. */
  readonly text: string;
  readonly shortfall: Shortfall | null;
  /** The probability that the claim holds by the evidence that decided; null where that tells none. */
  readonly conformance: Conformance | null;
  /** The evidence that decided, first; then what else was run. */
  readonly evidence: readonly ClaimEvidence[];
}

/** What it takes to judge claims. */
export interface ClaimContext extends EvidenceContext {
  readonly rule: DecisionRule;
}

/** A claim that nothing has tested, with a word on what would. */
export function untestedClaim(text: string, evidence: readonly ClaimEvidence[] = []): ClaimVerdict {
  return { status: 'untested', text, shortfall: null, conformance: null, evidence };
}

/** A claim that cannot be met in principle, and why. */
export function notReachableClaim(text: string): ClaimVerdict {
  return { status: 'notReachable', text, shortfall: null, conformance: null, evidence: [] };
}

/** A claim of a sheet with its verdict. */
export interface JudgedClaim extends ClaimVerdict {
  readonly claim: Claim;
}

/** By how much a value stays below (or, where less is better, lies above) what is claimed. */
export function shortfallOf(
  claimed: number,
  { value, interval }: ClaimEvidence,
  lessIsBetter: boolean,
): Shortfall {
  const miss = (found: number) => (lessIsBetter ? found - claimed : claimed - found);
  const ends = interval === null ? null : [miss(interval.low), miss(interval.high)];
  return {
    value: miss(value),
    range: ends === null ? null : { low: Math.min(...ends), high: Math.max(...ends) },
    share: miss(value) / claimed,
  };
}

/**
 * Whether a claim is held: what was measured lies on the better side of it by a guard band as wide as its uncertainty, so
 * that even the worse end of its 95 % interval meets the claim. What a machine was only set to, and a value without an
 * interval, keep no guard band.
 * Source: JCGM 106:2012, 8.3.2, guarded acceptance.
 */
export function holds(
  claimed: number,
  { value, interval, censored, how }: ClaimEvidence,
  lessIsBetter: boolean,
): boolean {
  if (how === 'set') return false;
  if (lessIsBetter) return (censored === 'below' ? value : (interval?.high ?? Infinity)) <= claimed;
  return (censored === 'above' ? value : (interval?.low ?? -Infinity)) >= claimed;
}

/**
 * What becomes of a claim by a value whose interval reaches to both of its sides: open by guarded acceptance; by simple
 * acceptance the value alone decides, which needs a known uncertainty.
 * Source: JCGM 106:2012, 8.2, simple acceptance.
 */
export function betweenStatus(
  claimed: number,
  { value, interval, how }: ClaimEvidence,
  lessIsBetter: boolean,
  rule: DecisionRule,
): 'accepted' | 'rejected' | 'notContradicted' {
  if (rule === 'guardedAcceptance' || how === 'set' || interval === null) return 'notContradicted';
  return (lessIsBetter ? value <= claimed : value >= claimed) ? 'accepted' : 'rejected';
}

/** The probability that a claim holds by what was measured; null where a bound or the lack of an interval tells none. */
export function conformanceBy(
  claimed: number,
  { value, interval, censored, how, isAdopted = false }: ClaimEvidence,
  lessIsBetter: boolean,
): Conformance | null {
  if (how === 'set') return null;
  const orBetter = censored === (lessIsBetter ? 'below' : 'above');
  if (interval !== null) {
    const median = isAdopted ? middle(interval) : value;
    return conformanceOf(claimed, { ...interval, median }, { lessIsBetter, orBetter });
  }
  return orBetter && (lessIsBetter ? value <= claimed : value >= claimed) ? beyondBound : null;
}

/** Whether nothing speaks against a claim: the value lies on the better side of it, or its interval reaches it. */
export function isCompatible(
  claimed: number,
  { value, interval, censored }: ClaimEvidence,
  lessIsBetter: boolean,
): boolean {
  if (lessIsBetter) return censored !== 'above' && (interval?.low ?? value) <= claimed;
  return censored !== 'below' && (interval?.high ?? value) >= claimed;
}
