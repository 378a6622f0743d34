import type { Trial } from '../registry/generated/documents.ts';
import type { Dimension } from '../units/dimension.ts';

/** On which side of the tested range a limit lies that the readings do not bracket. */
export type Censoring = 'above' | 'below';

/** A number that a method drew from readings, in the canonical unit of its dimension. */
export interface ReducedResult {
  /** One of those that the method says it finds. */
  readonly quantity: string;
  readonly dimension: Dimension;
  /** The median of what the readings leave possible; for a censored result the bound that they do support. */
  readonly value: number;
  /** The 95 % coverage interval, probabilistically symmetric (JCGM 101:2008, 3.15); no ends when censored. */
  readonly interval: { readonly low: number | null; readonly high: number | null; readonly coverage: 0.95 };
  readonly censored: Censoring | null;
  /** What distinguishes it from other results of the same trial; acceleration in mm/s2. */
  readonly at?: { readonly acceleration: number };
}

/** One axis of a plot. */
interface CurveAxis {
  /** Name of the quantity, such as `commandedFlow`. */
  readonly quantity: string;
  readonly dimension: Dimension;
}

/** What a plot of the reduction shows, all numbers in the canonical units of the axes. */
export interface ReductionCurve {
  readonly x: CurveAxis;
  readonly y: CurveAxis;
  readonly readings: readonly { readonly x: number; readonly y: number }[];
  /** The fitted curve. */
  readonly fit: readonly { readonly x: number; readonly y: number }[];
  /** Pointwise 95 % coverage band of the curve. */
  readonly band: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  /** The level on the y axis that decides, where one does. */
  readonly threshold: number | null;
  /** Where the curve crosses the threshold, as far as that lies inside of the tested range. */
  readonly limits: readonly { readonly value: number; readonly low: number; readonly high: number }[];
}

/** What a trial's readings tell. */
export interface TrialResults {
  /** Name of the method, as trials write it. */
  readonly method: Trial['method'];
  readonly results: readonly ReducedResult[];
  /** What a reader should know before relying on the results; each a sentence that says what would help. */
  readonly warnings: readonly string[];
}

/** What a method makes of a trial's readings: what they tell, and what there is to draw. */
export interface Reduction extends TrialResults {
  /** Null where there is nothing to draw; worked out when it is asked for. */
  readonly curve: ReductionCurve | null;
}

/** A reduction of which there is something to draw. */
export interface DrawnReduction extends Reduction {
  readonly curve: ReductionCurve;
}
