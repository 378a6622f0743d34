import { describe, expect, test } from 'vitest';
import { leastSquares } from '../../src/statistics/least-squares.ts';

function weightedLine(x: readonly number[], y: readonly number[], uncertainties: readonly number[]) {
  const weights = uncertainties.map((uncertainty) => 1 / uncertainty ** 2);
  const fit = leastSquares(
    x.map((value) => [1, value]),
    y,
    weights,
  );
  if (!fit.ok) throw new Error(fit.error.message);
  const { coefficients, cofactors, residualSquares } = fit.value;
  return {
    intercept: coefficients[0],
    slope: coefficients[1],
    interceptUncertainty: Math.sqrt(cofactors[0]![0]!),
    slopeUncertainty: Math.sqrt(cofactors[1]![1]!),
    covariance: cofactors[0]![1],
    chiSquared: residualSquares,
  };
}

function expectDigits(found: object, printed: Readonly<Record<string, number>>, decimals: number) {
  for (const [name, value] of Object.entries(printed)) {
    expect((found as Record<string, number>)[name], name).toBeCloseTo(value, decimals);
  }
}

// ISO/TS 28037:2010, Determination and use of straight-line calibration functions, clause 6, the two examples of
// weighted least squares: values from memory, as printed to three decimals.
describe('ISO/TS 28037:2010, clause 6', () => {
  const x = [1, 2, 3, 4, 5, 6];

  test('equal uncertainties', () => {
    expectDigits(
      weightedLine(x, [3.3, 5.6, 7.1, 9.3, 10.7, 12.1], [0.5, 0.5, 0.5, 0.5, 0.5, 0.5]),
      {
        ...{ intercept: 1.867, slope: 1.757, interceptUncertainty: 0.465, slopeUncertainty: 0.12 },
        ...{ covariance: -0.05, chiSquared: 1.665 },
      },
      3,
    );
  });

  test('unequal uncertainties', () => {
    expectDigits(
      weightedLine(x, [3.2, 4.3, 7.6, 8.6, 11.7, 12.8], [0.5, 0.5, 0.5, 1, 1, 1]),
      {
        ...{ intercept: 0.885, slope: 2.057, interceptUncertainty: 0.53, slopeUncertainty: 0.178 },
        ...{ covariance: -0.082, chiSquared: 4.131 },
      },
      3,
    );
  });
});

// Bevington and Robinson, Data Reduction and Error Analysis for the Physical Sciences, 3rd ed., chapter 6: counts
// against the inverse square of the distance, each with the uncertainty of its count; values from memory.
test('Bevington and Robinson, table 6.2', () => {
  const distances = [0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.75, 1];
  const counts = [901, 652, 443, 339, 283, 281, 240, 220, 180, 154];
  const line = weightedLine(
    distances.map((distance) => 1 / distance ** 2),
    counts,
    counts.map(Math.sqrt),
  );
  expectDigits(line, { intercept: 119.5, interceptUncertainty: 7.6, slope: 30.7, slopeUncertainty: 1 }, 1);
});
