import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import type { EvidenceFault } from '../../evidence/standing.ts';
import type { Conformance } from '../../knowledge/conformance.ts';
import type { DecisionRule } from '../../knowledge/decision-rule.ts';
import type { Quirk } from '../../knowledge/quirks.ts';
import type { SuitabilityReason, Verdict } from '../../knowledge/suitability/suitability.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius, Range } from '../../units/canonical.ts';

/** A verdict in words. */
export const verdictText: Readonly<Record<Verdict, string>> = {
  suits: 'suits',
  limited: 'suits with limits',
  unsuitable: 'unsuitable',
};

/** One thing that speaks for or against a pairing, with its numbers. */
export interface MatchReason extends SuitabilityReason {
  /** What is wrong with the evidence of the flow, where that is the reason. */
  readonly fault?: EvidenceFault;
}

/** Whether a reason is to be told where only what speaks against a pairing is: what somebody has accepted is, too. */
export function speaksAgainst({ verdict, fault }: MatchReason): boolean {
  return verdict !== 'suits' || fault !== undefined;
}

/** A melt flow that is known or expected of a pairing. */
export interface MatchFlow {
  readonly value: CubicMillimetresPerSecond;
  /** 95 % interval of a measured one, the range of an expected one. */
  readonly range: Range | null;
  readonly basis: 'measured' | 'expected';
  /** Whether the ladder ended before its limit, so that the flow is at least this. */
  readonly isLowerBound: boolean;
  /** The trials that it rests on. */
  readonly trials: readonly string[];
  /** Whether the readings of one of them were simulated. */
  readonly isSimulated: boolean;
  readonly nozzleTemperature: DegreesCelsius;
}

/** What it takes to match. */
export interface MatchContext extends EvidenceContext {
  readonly rule: DecisionRule;
}

/** A measured flow against what is claimed for its nozzle. */
export interface ClaimedFlow {
  readonly claimed: CubicMillimetresPerSecond;
  /** The probability that the claim holds; null where the flow was not measured, or has no interval. */
  readonly conformance: Conformance | null;
}

/** A machine and a filament, with the nozzle that serves best. */
export interface PairingMatch {
  readonly machine: string;
  readonly filament: string;
  readonly nozzle: string;
  readonly verdict: Verdict;
  readonly reasons: readonly MatchReason[];
  /** Null where nothing is known of it, and where the pairing is unsuitable. */
  readonly flow: MatchFlow | null;
  /** What is claimed for the nozzle, beside a known flow; null where nothing is. */
  readonly claim: ClaimedFlow | null;
  /** What the bench has noted of it, the newest first. */
  readonly quirks: readonly Quirk[];
}
