import { expect, test } from 'vitest';
import { chiSquaredTail } from '../../src/statistics/chi-squared.ts';

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
