/** Why readings cannot be reduced: something that whoever wrote them can put right. */
export interface BenchProblem {
  /** Stable name of the kind of problem, such as `missingColumn` or `tooFewSteps`. */
  readonly code: string;
  /** What is wrong, with what was found. */
  readonly message: string;
  readonly found?: string;
  /** What to do. */
  readonly help: string;
  /** The line of the file, or the place in an inline list counted from 1. */
  readonly row?: number;
}
