import type { CubicMillimetresPerSecond, Fraction, Range } from '../../../units/canonical.ts';
import type { ReducedResult } from '../../reduction.ts';
import type { Observations } from '../../sheet/observations.ts';
import type { FlowLadderSettings } from '../flow-ladder-settings.ts';
import type { LadderStep, WeighedPiece } from '../flow-ladder-steps.ts';

/** What has been weighed so far, possibly nothing, and how it is judged. */
export interface LadderSoFar {
  readonly observations: Observations;
  readonly settings: FlowLadderSettings;
}

/** What is known of a ladder before its pieces, and what is asked of it. */
export interface LadderOutlook {
  /** The lowest and the highest flow of the whole ladder, mm3/s. */
  readonly lowest: CubicMillimetresPerSecond;
  readonly highest: CubicMillimetresPerSecond;
  /** Where the limit is expected, mm3/s. */
  readonly expected: Range & { readonly value: CubicMillimetresPerSecond };
  /** Width of the 95 % interval at which feeding may stop, as a part of the limit. */
  readonly askedWidth: Fraction;
}

/** Different flows that a reduction needs. */
export const fewestFlows = 4;

/** Why a flow is the one to feed. */
export type FeedReason =
  | 'fullDelivery'
  | 'repeat'
  | 'climb'
  | 'between'
  | 'lower'
  | 'belowHalt'
  | 'onset'
  | 'gap'
  | 'baseline';

/** Why feeding may stop. */
export type StopReason = 'reached' | 'heldToTop' | 'nearHalt' | 'cannotNarrow';

/** A piece to feed next. */
export interface FeedNext {
  readonly step: 'feed';
  readonly flow: CubicMillimetresPerSecond;
  readonly reason: FeedReason;
  /** Width of the interval that is expected after it, as a part of the limit; null before the limit is bracketed. */
  readonly expectedWidth: Fraction | null;
  /** Pieces that the asked width will likely take, this one among them; null where that cannot be told or is more than 20. */
  readonly piecesToGo: number | null;
  /** The steps on either side of the flow, and what is missing there. */
  readonly below: FedStep | null;
  readonly above: FedStep | null;
  /** Pieces that show full delivery, and pieces near the limit. */
  readonly counts: { readonly full: number; readonly near: number } | null;
}

/** A flow that was fed, and what is missing there against the lowest one. */
interface FedStep {
  readonly flow: CubicMillimetresPerSecond;
  readonly missing: Fraction;
}

/** Feeding may stop, and why. */
export interface StopFeeding {
  readonly step: 'stop';
  readonly reason: StopReason;
}

/** What keeps flows from being proposed: the end of the whole ladder, a flow that lacks too much, a halt. */
export type CeilingReason = 'ladder' | 'farPast' | 'halt';

/** The highest flow that is proposed, and why. */
export interface Ceiling {
  readonly flow: CubicMillimetresPerSecond;
  readonly reason: CeilingReason;
}

/** What to do after the pieces that have been weighed. */
export interface NextPiece {
  readonly pieces: number;
  /** The flows that were fed; null before the first. */
  readonly flows: (Range & { readonly count: number }) | null;
  readonly ceiling: Ceiling;
  /** What the pieces give so far; null where there are too few. */
  readonly result: ReducedResult | null;
  /** Width of the interval now, as a part of the limit; null where it is open. */
  readonly width: Fraction | null;
  readonly next: FeedNext | StopFeeding;
}

/** A ladder as the choice of the next flow sees it. */
export interface JudgedSteps {
  /** The pieces that count, in the order in which they were fed, and what they give at each flow. */
  readonly pieces: readonly WeighedPiece[];
  readonly steps: readonly LadderStep[];
  readonly settings: FlowLadderSettings;
  readonly outlook: LadderOutlook;
  /** No flow above it is fed, mm3/s. */
  readonly ceiling: CubicMillimetresPerSecond;
}

/** What a step is missing against the lowest one. */
export function missingShare({ meanLogRatio }: LadderStep, [lowest]: readonly LadderStep[]): Fraction {
  return 1 - Math.exp(meanLogRatio - (lowest?.meanLogRatio ?? Number.NaN));
}
