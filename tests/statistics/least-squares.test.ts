import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastSquares } from '../../src/statistics/least-squares.ts';

function fitted(...args: Parameters<typeof leastSquares>) {
  const fit = leastSquares(...args);
  if (!fit.ok) throw new Error(fit.error.message);
  return fit.value;
}

const small = fc.integer({ min: -50, max: 50 });

test('finds the line that observations lie on', () => {
  fc.assert(
    fc.property(small, small, (intercept, slope) => {
      const design = [1, 2, 3, 5, 8].map((x) => [1, x]);
      const { coefficients } = fitted(
        design,
        design.map(([, x = 0]) => intercept + slope * x),
      );
      expect(coefficients[0]).toBeCloseTo(intercept, 9);
      expect(coefficients[1]).toBeCloseTo(slope, 9);
    }),
  );
});

test('an observation of weight 2 counts like two observations', () => {
  const twice = fitted(
    [
      [1, 0],
      [1, 1],
      [1, 2],
      [1, 2],
    ],
    [0, 2, 3, 3],
  );
  const weighted = fitted(
    [
      [1, 0],
      [1, 1],
      [1, 2],
    ],
    [0, 2, 3],
    [1, 1, 2],
  );
  for (const [index, coefficient] of twice.coefficients.entries()) {
    expect(weighted.coefficients[index]).toBeCloseTo(coefficient, 12);
  }
  expect(weighted.rSquared).toBeCloseTo(twice.rSquared, 12);
});

test('the covariance of a mean is the variance over the count', () => {
  const { coefficients, covariance, degreesOfFreedom } = fitted([[1], [1], [1], [1]], [1, 2, 3, 4]);
  expect(coefficients[0]).toBeCloseTo(2.5, 14);
  expect(covariance[0]?.[0]).toBeCloseTo(5 / 3 / 4, 14);
  expect(degreesOfFreedom).toBe(3);
});

test('says when there are too few observations or one column repeats another', () => {
  expect(leastSquares([[1, 2]], [3])).toMatchObject({ ok: false, error: { code: 'tooFewObservations' } });
  expect(leastSquares([], [])).toMatchObject({ ok: false, error: { code: 'tooFewObservations' } });
  const repeated = leastSquares(
    [
      [1, 2],
      [2, 4],
      [3, 6],
    ],
    [1, 2, 4],
  );
  expect(repeated).toMatchObject({ ok: false, error: { code: 'dependentColumns' } });
});
