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

test('as many observations as coefficients are met, and tell nothing of their scatter', () => {
  const fit = leastSquares(
    [
      [1, 0],
      [1, 2],
    ],
    [3, 7],
  );
  if (!fit.ok) throw new Error(fit.error.message);
  expect(fit.value.degreesOfFreedom).toBe(0);
  expect(fit.value.coefficients[0]).toBeCloseTo(3, 12);
  expect(fit.value.coefficients[1]).toBeCloseTo(2, 12);
});

test('says in words what it lacks, and what to do', () => {
  expect(leastSquares([[1, 2]], [5])).toMatchObject({
    error: {
      message: '1 observations do not determine 2 coefficients',
      help: 'Add observations, or take columns away.',
    },
  });
  const twice = [1, 2, 3].map((x) => [x, 2 * x]);
  expect(leastSquares(twice, [1, 2, 3])).toMatchObject({
    error: {
      message: 'The columns of the design depend on each other',
      help: 'Take one of them away, or vary what it stands for.',
    },
  });
});

test('a line through the origin is compared with no line at all, one with a constant with the mean', () => {
  const [x, y] = [
    [1, 2, 3],
    [1, 2, 4],
  ];
  const through = leastSquares(
    x.map((each) => [each]),
    y,
  );
  const free = leastSquares(
    x.map((each) => [1, each]),
    y,
  );
  if (!through.ok || !free.ok) throw new Error('no fit');
  // Sum of squares 21, of which 17^2/14 is explained; about the mean 14/3, of which 4.5.
  expect(through.value.rSquared).toBeCloseTo(17 ** 2 / 14 / 21, 12);
  expect(free.value.rSquared).toBeCloseTo(4.5 / (14 / 3), 12);
});
