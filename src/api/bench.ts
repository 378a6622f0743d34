export { type AdoptingProfile, type AdoptProblem, adoptLimits } from '../bench/adopt/adopt-limit.ts';
export type { BenchProblem } from '../bench/bench-problem.ts';
export type { BenchRun, Fact } from '../bench/facts/fact.ts';
export {
  fitLimitLine,
  type LimitLine,
  type LimitLineProblem,
  type LimitPoint,
} from '../bench/limit-line/limit-line.ts';
export {
  type BeyondTested,
  type Extrapolation,
  type LimitAnswer,
  limitAt,
  type TemperatureAnswer,
  type TemperatureSide,
  temperatureForFlow,
} from '../bench/limit-line/limit-line-answers.ts';
export {
  type NoLadders,
  type PairingReduction,
  type PairingTrialsProblem,
  type PairingTrialsRequest,
  reducePairing,
} from '../bench/limit-line/pairing-reduction.ts';
export type { Method } from '../bench/method.ts';
export { type MethodName, methodNames } from '../bench/method-facts.ts';
export { benchMethods } from '../bench/methods.ts';
export { reduceTrial } from '../bench/reduce-trial.ts';
export type { Censoring, ReducedResult, Reduction, ReductionCurve } from '../bench/reduction.ts';
export { readBenchSheet } from '../bench/sheet/bench-sheet.ts';
export type { Observations } from '../bench/sheet/observations.ts';
