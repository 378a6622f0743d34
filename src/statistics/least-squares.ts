import { type Problem, type Result, refusal, success } from '../result.ts';
import { compensatedSum } from './describe.ts';
import { householderQr, solveUpper } from './qr-decomposition.ts';

/** A fitted linear model; coefficients in the order of the design's columns. */
export interface LinearFit {
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  /** Covariance of the coefficients. */
  readonly covariance: readonly (readonly number[])[];
  /**
   * (XᵀWX)⁻¹: the covariance for a residual variance of one. Where the weights are inverse squares of known standard
   * uncertainties it is the covariance that follows from those alone (ISO/TS 28037:2010, clause 6).
   */
  readonly cofactors: readonly (readonly number[])[];
  /** Sum of the weighted squares of the residuals. */
  readonly residualSquares: number;
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
  /** Share of the variation explained: about the mean if the design has a constant column, else about zero. */
  readonly rSquared: number;
}

/** Why a linear fit has no answer. */
export type LinearFitProblem = Problem<'tooFewObservations' | 'dependentColumns'>;

/** Below this a column differs from a combination of the others by rounding alone. */
const leastIndependence = 1e-14;

/**
 * Ordinary or weighted linear least squares by Householder QR (Golub and Van Loan, Matrix Computations, 4th ed., 5.3.2).
 * `design` holds one row an observation, weights are inverse variances up to a common factor.
 */
export function leastSquares(
  design: readonly (readonly number[])[],
  response: readonly number[],
  weights?: readonly number[],
): Result<LinearFit, LinearFitProblem> {
  const columns = design[0]?.length ?? 0;
  const degreesOfFreedom = design.length - columns;
  if (columns === 0 || degreesOfFreedom < 0) {
    return refusal(
      'tooFewObservations',
      `${response.length} observations do not determine ${columns} coefficients`,
      'Add observations, or take columns away.',
    );
  }
  const scales = response.map((_, row) => Math.sqrt(weights?.[row] ?? 1));
  const scaled = design.map((row, index) => row.map((cell) => cell * (scales[index] ?? 1)));
  const target = response.map((value, index) => value * (scales[index] ?? 1));
  const qr = householderQr(scaled);
  if (qr.independence < leastIndependence) {
    return refusal(
      'dependentColumns',
      'The columns of the design depend on each other',
      'Take one of them away, or vary what it stands for.',
    );
  }
  const coefficients = solveUpper(qr.upper, qr.applyTranspose(target));
  const residuals = target.map(
    (value, row) =>
      value - compensatedSum((scaled[row] ?? []).map((cell, column) => cell * (coefficients[column] ?? 0))),
  );
  const residualSquares = compensatedSum(residuals.map((residual) => residual * residual));
  const variance = residualSquares / degreesOfFreedom;
  const cofactors = inverseGram(qr.upper);
  const covariance = cofactors.map((row) => row.map((cell) => cell * variance));
  return success({
    coefficients,
    standardErrors: covariance.map((row, index) => Math.sqrt(row[index] ?? Number.NaN)),
    covariance,
    cofactors,
    residualSquares,
    residualStandardDeviation: Math.sqrt(variance),
    degreesOfFreedom,
    rSquared: 1 - residualSquares / totalSquares(design, response, weights),
  });
}

/** (RᵀR)⁻¹ from the upper triangle R. */
function inverseGram(upper: readonly (readonly number[])[]): number[][] {
  const size = upper.length;
  const inverse = Array.from({ length: size }, (_, column) =>
    solveUpper(
      upper,
      Array.from({ length: size }, (_, row) => (row === column ? 1 : 0)),
    ),
  );
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (_, column) =>
      compensatedSum(inverse.map((solution) => (solution[row] ?? 0) * (solution[column] ?? 0))),
    ),
  );
}

function totalSquares(
  design: readonly (readonly number[])[],
  response: readonly number[],
  weights?: readonly number[],
): number {
  const weight = (row: number) => weights?.[row] ?? 1;
  const first = design[0] ?? [];
  const hasConstant = first.some((cell, column) => design.every((row) => row[column] === cell));
  const total = compensatedSum(response.map((_, row) => weight(row)));
  const mean = hasConstant ? compensatedSum(response.map((value, row) => value * weight(row))) / total : 0;
  return compensatedSum(response.map((value, row) => weight(row) * (value - mean) ** 2));
}
