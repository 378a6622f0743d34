import { expect, test } from 'vitest';
import { normalQuantile } from '../../src/statistics/normal-quantile.ts';

test('has the percentage points of published tables', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.5, from memory.
  for (const [probability, quantile] of [
    [0.5, 0],
    [0.75, 0.6744898],
    [0.9, 1.2815516],
    [0.975, 1.959964],
    [0.995, 2.5758293],
    [0.9999, 3.7190165],
  ] as const) {
    expect(normalQuantile(probability)).toBeCloseTo(quantile, 6);
  }
});

// Solved by bisection of Python's math.erfc, in double precision.
test.each([
  [1e-12, 7.03448383],
  [1e-15, 7.94134533],
  [1e-20, 9.26234009],
  [1e-50, 14.93333753],
])('has seven digits far out too: %d', (probability, size) => {
  expect(-normalQuantile(probability) / size).toBeCloseTo(1, 6);
});

test('is odd about one half, and rises', () => {
  const probabilities = Array.from({ length: 999 }, (_, index) => (index + 1) / 1000);
  const quantiles = probabilities.map(normalQuantile);
  expect(quantiles).toEqual(quantiles.toSorted((one, other) => one - other));
  for (const [index, quantile] of quantiles.entries())
    expect(quantile).toBeCloseTo(-quantiles.at(-1 - index)!, 6);
});

test('is the inverse of the distribution, far out too', () => {
  // Beyond five standard deviations the tail is density over distance, to a few per cent (Feller, vol. 1, VII.1).
  for (const probability of [1e-8, 1e-12, 1e-20]) {
    const far = -normalQuantile(probability);
    const tail =
      (Math.exp(-0.5 * far * far) / (far * Math.sqrt(2 * Math.PI))) * (1 - 1 / far ** 2 + 3 / far ** 4);
    expect(tail / probability).toBeCloseTo(1, 2);
  }
});
