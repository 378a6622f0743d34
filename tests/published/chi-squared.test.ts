import { expect, test } from 'vitest';
import { chiSquaredQuantile, chiSquaredTail } from '../../src/statistics/chi-squared.ts';

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper critical values of the chi-square distribution;
// copied from memory.
test.each([
  [1, 0.05, 3.841],
  [2, 0.05, 5.991],
  [3, 0.05, 7.815],
  [5, 0.05, 11.07],
  [10, 0.05, 18.307],
  [30, 0.05, 43.773],
  [1, 0.01, 6.635],
  [4, 0.1, 7.779],
  [100, 0.05, 124.342],
])('%s degrees of freedom exceed with probability %s the value %s', (freedom, probability, value) => {
  expect(chiSquaredTail(value, freedom)).toBeCloseTo(probability, 4);
});

// With two degrees of freedom the tail is exp(-x/2) exactly.
test.each([0, 0.1, 1, 3, 10, 60])('two degrees of freedom have an exponential tail at %s', (value) => {
  expect(chiSquaredTail(value, 2) / Math.exp(-value / 2)).toBeCloseTo(1, 12);
});

test('is a probability that falls, and no number where nothing is asked', () => {
  let before = 1;
  for (let value = 0; value < 80; value += 0.37) {
    const tail = chiSquaredTail(value, 7);
    expect(tail).toBeLessThanOrEqual(before);
    before = tail;
  }
  expect([chiSquaredTail(-1, 2), chiSquaredTail(1, 0), chiSquaredTail(1, 1.5)]).toEqual([NaN, NaN, NaN]);
});

// The same handbook, lower and upper critical values; copied from memory. The median of two is 2 ln 2.
test.each([
  [1, 0.95, 3.841],
  [10, 0.95, 18.307],
  [10, 0.05, 3.94],
  [30, 0.975, 46.979],
  [100, 0.01, 70.065],
  [2, 0.5, 1.3863],
])('%s degrees of freedom stay with probability %s below %s', (freedom, probability, value) => {
  expect(chiSquaredQuantile(probability, freedom)).toBeCloseTo(value, 3);
});

test('the quantile undoes the tail, to its last digits', () => {
  for (const freedom of [1, 2, 7, 40, 300]) {
    for (const probability of [0.001, 0.3, 0.5, 0.9, 0.999]) {
      const tail = chiSquaredTail(chiSquaredQuantile(probability, freedom), freedom);
      expect(tail / (1 - probability)).toBeCloseTo(1, 9);
    }
  }
});

// With four degrees of freedom the tail is exp(-x/2)(1 + x/2) exactly: by the series below 6, by the fraction above.
test.each([0.01, 2, 5.9, 6, 6.1, 20, 100])(
  'four degrees of freedom have their closed form at %s',
  (value) => {
    expect(chiSquaredTail(value, 4) / (Math.exp(-value / 2) * (1 + value / 2))).toBeCloseTo(1, 12);
  },
);

test('nothing is exceeded for certain, and what is no number is none', () => {
  expect([chiSquaredTail(0, 1), chiSquaredTail(0, 9)]).toEqual([1, 1]);
  expect([chiSquaredTail(Number.NaN, 2), chiSquaredTail(1, -2)]).toEqual([NaN, NaN]);
});
