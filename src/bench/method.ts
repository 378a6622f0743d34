import type { Trial } from '../registry/generated/documents.ts';
import type { Result } from '../result.ts';
import type { BenchProblem } from './bench-problem.ts';
import type { BenchRun, RunFact } from './bench-run.ts';
import type { Reduction } from './reduction.ts';
import type { ColumnPlan } from './sheet/column-plan.ts';
import type { Observations } from './sheet/observations.ts';

/** Name of a bench method, as trials write it. */
export type MethodName = Trial['method'];

/** What a trial may have to name before its readings mean something. */
export type TrialKey = 'machine' | 'nozzle' | 'nozzleTemperature' | 'dryingTemperature' | 'job';

/** A bench method: what it reads, what it must know, and how it turns readings into a reduction. */
export interface Method extends ColumnPlan {
  readonly method: MethodName;
  /** What its trials must name besides the filament. */
  readonly names: readonly TrialKey[];
  /** The facts that it can use. */
  readonly takes: readonly RunFact[];
  /** The facts without which it cannot reduce. */
  readonly needs: readonly RunFact[];
  /** Observations have the columns of the plan, and the run has every fact that the method needs. */
  readonly reduce: (observations: Observations, run: BenchRun) => Result<Reduction, readonly BenchProblem[]>;
}
