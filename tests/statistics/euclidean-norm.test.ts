import { expect, test } from 'vitest';
import { euclideanNorm } from '../../src/statistics/euclidean-norm.ts';

test('the sides 3 and 4 give 5', () => {
  expect(euclideanNorm([3, -4])).toBe(5);
});

test('a vector of nothing, and of noughts, has no length', () => {
  expect(euclideanNorm([])).toBe(0);
  expect(euclideanNorm([0, 0])).toBe(0);
});

test('squares may leave what a number can hold', () => {
  expect(euclideanNorm([3e200, 4e200]) / 5e200).toBeCloseTo(1, 15);
  expect(euclideanNorm([1e200, 1])).toBe(1e200);
  expect(euclideanNorm([3e-200, 4e-200]) / 5e-200).toBeCloseTo(1, 15);
});

test('many small entries are not lost beside a large one', () => {
  const small = Array.from({ length: 1_000_000 }, () => 1e-8);
  expect(euclideanNorm([1, ...small])).toBe(Math.sqrt(1 + 1e-10));
});

test('what is no number, or endless, shows', () => {
  expect(euclideanNorm([1, Number.NaN])).toBeNaN();
  expect(euclideanNorm([1, Number.NEGATIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
});
