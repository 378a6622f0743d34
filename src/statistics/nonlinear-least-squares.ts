import { failure, type Problem, type Result, success } from '../result.ts';
import { compensatedSum } from './describe.ts';
import { euclideanNorm } from './euclidean-norm.ts';
import { type LinearFit, leastSquares } from './least-squares.ts';
import { householderQr, solveUpper } from './qr-decomposition.ts';

/** A curve with parameters, and the observations it shall fit. */
export interface NonlinearProblem {
  readonly model: (x: number, parameters: readonly number[]) => number;
  /** Where the search begins; its entries also say of what size the parameters are. */
  readonly start: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** A fitted curve; the standard errors hold for the model made linear at its parameters. */
export interface NonlinearFit {
  readonly parameters: readonly number[];
  readonly standardErrors: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly residualSumOfSquares: number;
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
}

/** Why a curve could not be fitted: another start may help against all but the first. */
export type NonlinearFitProblem = Problem<keyof typeof problems>;

const problems = {
  tooFewObservations: [
    'There are no more observations than parameters, or no parameters',
    'Add observations, or take parameters away.',
  ],
  notFinite: ['The model has no finite value at the start', 'Begin with other parameters.'],
  notConverged: ['The search has not come to rest', 'Begin with parameters nearer to the answer.'],
  dependentParameters: [
    'The observations do not tell the parameters apart',
    'Fix one of them, or observe where the model bends.',
  ],
} as const;

function refused(code: keyof typeof problems) {
  const [message, help] = problems[code];
  return failure({ code, message, help });
}

interface State {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  readonly squares: number;
}

/** Central differences are good to ten digits or so. */
const leastIndependence = 1e-9;
const mostIterations = 2000;
/** The search has settled when neither steps nor gains show in so many digits. */
const settled = 1e-13;

/**
 * Nonlinear least squares by the method of Levenberg and Marquardt with scaled steps
 * (Moré, "The Levenberg-Marquardt algorithm: implementation and theory", Lecture Notes in Mathematics 630, 1978,
 * 105-116; damping after Madsen, Nielsen, Tingleff, Methods for Non-linear Least Squares Problems, 2nd ed., 2004, 3.2).
 */
export function nonlinearLeastSquares(problem: NonlinearProblem): Result<NonlinearFit, NonlinearFitProblem> {
  const degreesOfFreedom = problem.x.length - problem.start.length;
  if (problem.start.length === 0 || degreesOfFreedom < 1) return refused('tooFewObservations');
  const state = stateAt(problem, problem.start);
  if (!Number.isFinite(state.squares)) return refused('notFinite');
  return search(problem, state);
}

function search(problem: NonlinearProblem, start: State): Result<NonlinearFit, NonlinearFitProblem> {
  let state = start;
  let scales = problem.start.map(() => 0);
  let damping = 1e-3;
  let growth = 2;
  for (let iteration = 0; iteration < mostIterations && Number.isFinite(damping); iteration++) {
    const slopes = jacobian(problem, state.parameters);
    scales = scales.map((scale, column) => Math.max(scale, columnNorm(slopes, column)));
    const step = dampedStep(slopes, state.residuals, scales, damping);
    const next = stateAt(problem, shifted(state.parameters, step));
    const predicted = predictedGain(slopes, state, step);
    if (isSettled(state, step, predicted))
      return finish(problem, next.squares <= state.squares ? next : state);
    const ratio = (state.squares - next.squares) / predicted;
    if (ratio > 0) {
      state = next;
      damping *= Math.max(1 / 3, 1 - (2 * ratio - 1) ** 3);
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  return refused(hasDependent(problem, state) ? 'dependentParameters' : 'notConverged');
}

function shifted(parameters: readonly number[], step: readonly number[]): number[] {
  return parameters.map((parameter, index) => parameter + (step[index] ?? Number.NaN));
}

function stateAt({ model, x, y }: NonlinearProblem, parameters: readonly number[]): State {
  const residuals = x.map((at, row) => (y[row] ?? Number.NaN) - model(at, parameters));
  return { parameters, residuals, squares: compensatedSum(residuals.map((residual) => residual ** 2)) };
}

/** Derivatives of the model by the parameters, by central differences. */
function jacobian({ model, start, x }: NonlinearProblem, parameters: readonly number[]): number[][] {
  const shifts = parameters.map(
    (parameter, index) =>
      Math.cbrt(Number.EPSILON) * (Math.abs(parameter) || Math.abs(start[index] ?? 0) || 1),
  );
  const sides = parameters.map((parameter, index) => {
    const shift = shifts[index] ?? 0;
    const [above, below] = [parameter + shift, parameter - shift];
    return { up: parameters.with(index, above), down: parameters.with(index, below), width: above - below };
  });
  return x.map((at) => sides.map(({ up, down, width }) => (model(at, up) - model(at, down)) / width));
}

function columnNorm(slopes: readonly (readonly number[])[], column: number): number {
  return euclideanNorm(slopes.map((row) => row[column] ?? 0));
}

/** Solves min |J·step - residuals|² + damping·|scales·step|² as one least-squares problem. */
function dampedStep(
  slopes: readonly (readonly number[])[],
  residuals: readonly number[],
  scales: readonly number[],
  damping: number,
): number[] {
  const penalties = scales.map((scale, row) =>
    scales.map((_, column) => (row === column ? Math.sqrt(damping) * (scale || 1) : 0)),
  );
  const qr = householderQr([...slopes, ...penalties]);
  return solveUpper(qr.upper, qr.applyTranspose([...residuals, ...scales.map(() => 0)]));
}

/** By how much the sum of squares would fall were the model linear. */
function predictedGain(
  slopes: readonly (readonly number[])[],
  state: State,
  step: readonly number[],
): number {
  const after = slopes.map(
    (row, index) =>
      (state.residuals[index] ?? 0) - compensatedSum(row.map((slope, column) => slope * (step[column] ?? 0))),
  );
  return state.squares - compensatedSum(after.map((residual) => residual ** 2));
}

function isSettled(state: State, step: readonly number[], predicted: number): boolean {
  const still = step.every(
    (change, index) => Math.abs(change) <= settled * Math.abs(state.parameters[index] ?? 0),
  );
  return still || Math.abs(predicted) <= settled * state.squares;
}

/** Whether the parameters' effects on the curve cannot be told apart within the accuracy of the differences. */
function hasDependent(problem: NonlinearProblem, { parameters }: State): boolean {
  return !(householderQr(jacobian(problem, parameters)).independence > leastIndependence);
}

/**
 * Whether what the linear model would still change is small against the parameters' uncertainty, as the relative offset
 * of Bates and Watts asks (Nonlinear Regression Analysis and Its Applications, 1988, 2.2.3): a search that is stuck on a
 * slope has not converged. Where nothing is left to fit, the parameters themselves are the measure.
 */
function isStationary({ parameters }: State, { coefficients, standardErrors }: LinearFit): boolean {
  return coefficients.every(
    (change, index) =>
      Math.abs(change) <= 1e-3 * (standardErrors[index] ?? 0) ||
      Math.abs(change) <= 1e-8 * Math.abs(parameters[index] ?? 0),
  );
}

function finish(problem: NonlinearProblem, state: State): Result<NonlinearFit, NonlinearFitProblem> {
  if (hasDependent(problem, state)) return refused('dependentParameters');
  const linear = leastSquares(jacobian(problem, state.parameters), state.residuals);
  if (!linear.ok) return refused('dependentParameters');
  if (!isStationary(state, linear.value)) return refused('notConverged');
  const { covariance, standardErrors, residualStandardDeviation, degreesOfFreedom } = linear.value;
  return success({
    parameters: state.parameters,
    standardErrors,
    covariance,
    residualSumOfSquares: state.squares,
    residualStandardDeviation,
    degreesOfFreedom,
  });
}
