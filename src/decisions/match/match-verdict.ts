import type { EvidenceFault } from '../../evidence/standing.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius, Range } from '../../units/canonical.ts';

/** How well a machine and a filament go together, the best first. */
export const verdicts = ['suits', 'limited', 'unsuitable'] as const;

/** Whether a filament suits a machine. */
export type Verdict = (typeof verdicts)[number];

/** A verdict in words. */
export const verdictText: Readonly<Record<Verdict, string>> = {
  suits: 'suits',
  limited: 'suits with limits',
  unsuitable: 'unsuitable',
};

/** What a reason is about. */
export type Aspect =
  | 'material'
  | 'filamentDiameter'
  | 'nozzleTemperature'
  | 'nozzleMaterial'
  | 'bed'
  | 'chamber'
  | 'fumes'
  | 'cooling'
  | 'dryer'
  | 'spool'
  | 'flow';

/** One thing that speaks for or against a pairing, with its numbers. */
export interface MatchReason {
  readonly aspect: Aspect;
  readonly verdict: Verdict;
  readonly text: string;
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
  readonly nozzleTemperature: DegreesCelsius;
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
}

/** The worst of the verdicts of some reasons. */
export function worstVerdict(reasons: readonly MatchReason[]): Verdict {
  const rank = Math.max(0, ...reasons.map(({ verdict }) => verdicts.indexOf(verdict)));
  return verdicts[rank] ?? 'unsuitable';
}
