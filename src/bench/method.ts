import type { Trial } from '../registry/generated/documents.ts';
import type { Result } from '../result.ts';
import type { BenchProblem } from './bench-problem.ts';
import type { Facts, RunOf } from './facts/fact.ts';
import type { TrialKey } from './facts/trial-key.ts';
import type { Reduction } from './reduction.ts';
import type { ColumnPlan } from './sheet/column-plan.ts';
import type { Observations } from './sheet/observations.ts';

/** Name of a bench method, as trials write it. */
export type MethodName = Trial['method'];

/** A bench method: what it reads, what it must know, and how it turns readings into a reduction. */
export interface Method<Known extends Facts = Facts> extends ColumnPlan {
  readonly method: MethodName;
  /** What its trials must name besides the filament. */
  readonly requiredKeys: readonly TrialKey[];
  /** The facts that it can use, in the order in which messages list them. */
  readonly facts: Known;
  /** The facts without which it cannot reduce. */
  readonly requiredFacts: readonly (keyof Known & string)[];
  /** Observations have the columns of the plan, and the run has every required fact. */
  // Written as a method, so that one with facts of its own is a `Method`; the run is always made from those facts.
  reduce(observations: Observations, run: RunOf<Known>): Result<Reduction, readonly BenchProblem[]>;
}
