import type { Result } from '../result.ts';
import type { AdoptableResult } from './adopt/adoptable-limit.ts';
import type { BenchProblem } from './bench-problem.ts';
import type { DoubtfulReading } from './doubt/doubtful-reading.ts';
import type { Facts, RunOf } from './facts/fact.ts';
import type { TrialKey } from './facts/trial-key.ts';
import type { MethodName } from './method-facts.ts';
import type { Reduction } from './reduction.ts';
import type { OpenWords, ResultWords } from './result-words.ts';
import type { EventMark, RunEvent } from './run-event.ts';
import type { ColumnPlan } from './sheet/column-plan.ts';
import type { Observations } from './sheet/observations.ts';

/**
 * A bench method: what it reads, what it must know, how it turns readings into a reduction, what of that profiles can
 * state, and the words for people. How a run is laid out stands beside it, in `runLayouts`.
 */
export interface Method<Known extends Facts = Facts> extends ColumnPlan {
  readonly method: MethodName;
  /** The columns that an instrument or an eye reads; the others are set. */
  readonly read: readonly string[];
  /** What its trials must name besides the filament. */
  readonly requiredKeys: readonly TrialKey[];
  /** The facts that it can use, in the order in which messages list them. */
  readonly facts: Known;
  /** The facts without which it cannot reduce. */
  readonly requiredFacts: readonly (keyof Known & string)[];
  /** Observations have the columns of the plan, and the run has every required fact. */
  // Written as a method, so that one with facts of its own is a `Method`; the run is always made from those facts.
  reduce(observations: Observations, run: RunOf<Known>): Result<Reduction, readonly BenchProblem[]>;
  /** Readings that the others do not let expect; asked of observations that it can reduce. */
  doubtful(observations: Observations, run: RunOf<Known>): readonly DoubtfulReading[];
  /** What it finds, by the names of the quantities. */
  readonly results: Readonly<Record<string, ResultWords>>;
  readonly openWords: OpenWords;
  /** What of its results profiles can state. */
  readonly adoptable: readonly AdoptableResult[];
  /** What stands below its reductions besides the usual caution. */
  readonly cautions?: readonly string[];
  /** What of the events of a trial its plot shows; nothing unless given. */
  readonly eventMarks?: (events: readonly RunEvent[]) => readonly EventMark[];
}
