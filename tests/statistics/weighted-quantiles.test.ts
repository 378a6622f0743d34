import fc from 'fast-check';
import { expect, test } from 'vitest';
import { weightedQuantiles } from '../../src/statistics/weighted-quantiles.ts';

test('gives the quantiles of even values with even weights', () => {
  const values = Array.from({ length: 10_000 }, (_, index) => (index + 0.5) / 10_000);
  const quantile = weightedQuantiles(
    values,
    values.map(() => 1),
  );
  for (const probability of [0.025, 0.5, 0.975]) expect(quantile(probability)).toBeCloseTo(probability, 3);
});

test('follows the weights', () => {
  const values = Array.from({ length: 10_000 }, (_, index) => (index + 0.5) / 10_000);
  // Density 2x on 0 to 1, so that the quantile is the root of the probability.
  const quantile = weightedQuantiles(values, values);
  for (const probability of [0.04, 0.25, 0.81]) {
    expect(quantile(probability)).toBeCloseTo(Math.sqrt(probability), 3);
  }
});

test('of one value is that value', () => {
  expect(weightedQuantiles([3], [0.2])(0.5)).toBe(3);
  expect(weightedQuantiles([3, 3], [1, 2])(0.975)).toBe(3);
});

const weighted = fc.array(
  fc.tuple(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true })),
  { minLength: 2, maxLength: 40 },
);

test('rises with the probability within the values, and the order of these makes no difference', () => {
  fc.assert(
    fc.property(weighted, (pairs) => {
      const of = (list: typeof pairs) =>
        weightedQuantiles(
          list.map(([value]) => value),
          list.map(([, weight]) => weight),
        );
      const probabilities = Array.from({ length: 21 }, (_, index) => index / 20);
      const quantiles = probabilities.map(of(pairs));
      expect(quantiles).toEqual(quantiles.toSorted((one, other) => one - other));
      const values = pairs.map(([value]) => value);
      expect(quantiles[0]).toBeGreaterThanOrEqual(Math.min(...values));
      expect(quantiles.at(-1)).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
      const width = (Math.max(...values) - Math.min(...values)) / 1000;
      for (const [index, quantile] of probabilities.map(of(pairs.toReversed())).entries()) {
        expect(Math.abs(quantile - quantiles[index]!)).toBeLessThanOrEqual(width + 1e-9);
      }
    }),
    { numRuns: 100, seed: 11 },
  );
});

test('weights count against their sum, whatever it is', () => {
  const quantile = weightedQuantiles([0, 1, 2, 3], [10, 0, 0, 30]);
  expect(quantile(0.2)).toBeCloseTo(0, 2);
  expect(quantile(0.25)).toBeCloseTo(0, 2);
  expect(quantile(0.26)).toBeCloseTo(3, 2);
  expect(quantile(1)).toBe(3);
});

test('values without weight are no ends', () => {
  expect(weightedQuantiles([0, 1, 2], [0, 1, 1])(0)).toBeCloseTo(1, 2);
  expect(weightedQuantiles([0, 1, 2], [1, 1, 0])(1)).toBeCloseTo(1, 2);
});

test('values below zero and in any order have their own ends', () => {
  const quantile = weightedQuantiles([-1, -5, -3], [1, 1, 1]);
  expect(quantile(0)).toBeCloseTo(-5, 2);
  expect(quantile(1)).toBeCloseTo(-1, 2);
});
