import type { JobFeature } from '../../bench/reference-print/job-plan.ts';
import type { Quirk } from '../../knowledge/quirks.ts';
import type { Basis } from '../../registry/statement.ts';
import type { BoundName } from '../../tables/derive/speed-table.ts';
import type {
  Count,
  Decibels,
  Fraction,
  Grams,
  MillimetresPerSecond,
  Money,
  Range,
  Seconds,
} from '../../units/canonical.ts';
import type { NamedBasis } from './weakest-number.ts';

/** What the time of a job is spent under: a bound, or the handling between paths, which no speed shortens. */
export type TimeLimiter = BoundName | 'handling';

/** A value with what it rests on. */
export interface Known<Value> {
  readonly value: Value;
  readonly basis: Basis;
  /** Whether a simulated trial shows it. */
  readonly isSimulated: boolean;
}

/** Time of one kind of path of a job. */
export interface FeatureTime {
  readonly feature: JobFeature;
  readonly time: Seconds;
  /** The bound under which most of its time is spent. */
  readonly limiter: TimeLimiter;
  readonly commandedSpeed: MillimetresPerSecond;
  /** Highest speed that the head really reaches on the segments of the job. */
  readonly peakSpeed: MillimetresPerSecond;
  /** Basis of the weakest number that its time rests on. */
  readonly basis: Basis;
  /** Whether a simulated trial shows that number. */
  readonly isSimulated: boolean;
}

/** How well the time model met the reference prints of a machine. */
export interface ModelCheck {
  readonly prints: Count;
  /** Largest distance of a modelled time from the measured one, as a share of the measured one. */
  readonly largestError: Fraction;
  /** Ids of the trials. */
  readonly trials: readonly string[];
}

/** A job on a pairing. */
export interface JobEstimate {
  readonly machine: string;
  readonly nozzle: string;
  readonly filament: string;
  /** From the first path to the last: heating up, homing and levelling are not in it. */
  readonly time: Seconds;
  /** The time where the melt flow limits are at either end of their 95 % coverage intervals; null where one has none. */
  readonly timeInterval: Range | null;
  /** The time with smaller shares of the melt flow limits than are used, from the largest. */
  readonly lessMelt: readonly { readonly share: Fraction; readonly time: Seconds }[];
  readonly features: readonly FeatureTime[];
  /** Changes of layer, and waits in layers that are done before the plastic holds its shape. */
  readonly betweenLayers: Seconds;
  /** What the whole time is spent under, the longest first; shares that are 0 are left out. */
  readonly limiters: readonly { readonly limiter: TimeLimiter; readonly time: Seconds }[];
  /** Highest speed really reached while printing, and on travel moves; null where the job has none. */
  readonly printPeak: MillimetresPerSecond | null;
  readonly travelPeak: MillimetresPerSecond | null;
  readonly topSpeed: Known<MillimetresPerSecond> | null;
  /** Filament in the part. */
  readonly mass: Known<Grams> | null;
  readonly filamentCost: Known<Money> | null;
  readonly soundLevel: Known<Decibels> | null;
  readonly price: Known<Money> | null;
  /** Weakest number that the time rests on. */
  readonly weakest: NamedBasis;
  /** Null where there is no reference print on the machine to compare the model with. */
  readonly modelCheck: ModelCheck | null;
  readonly warnings: readonly string[];
  /** What the bench has noted of the pairing, the newest first. */
  readonly quirks: readonly Quirk[];
  /** The trials that any of this rests on. */
  readonly trials: readonly string[];
}
