export { type CoveredValue, probabilityUpTo } from '../statistics/conformance.ts';
export {
  type CoverageInterval,
  quantile,
  shortestInterval,
  symmetricInterval,
} from '../statistics/coverage-interval.ts';
export { type Description, describe } from '../statistics/describe.ts';
export type { Distribution } from '../statistics/distributions.ts';
export { type LinearFit, type LinearFitProblem, leastSquares } from '../statistics/least-squares.ts';
export { median } from '../statistics/middle.ts';
export { nonDecreasingFit } from '../statistics/monotone-regression.ts';
export { type Propagated, type Propagation, propagate } from '../statistics/monte-carlo.ts';
export {
  type NonlinearFit,
  type NonlinearFitProblem,
  type NonlinearProblem,
  nonlinearLeastSquares,
} from '../statistics/nonlinear-least-squares.ts';
export { type RandomSource, randomSource } from '../statistics/random.ts';
export { studentTDistribution, studentTQuantile } from '../statistics/student-t.ts';
