import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chiSquaredQuantile, chiSquaredTail } from '../../src/statistics/chi-squared.ts';

describe('the tail of chi-squared', () => {
  test('with two degrees of freedom is exponential, on both sides of where the method changes', () => {
    for (const value of [1e-9, 0.1, 1, 3.9, 4, 4.1, 30, 200]) {
      expect(chiSquaredTail(value, 2) / Math.exp(-value / 2)).toBeCloseTo(1, 12);
    }
  });

  test('with four is exponential times 1 + x/2', () => {
    for (const value of [0.1, 1, 5.9, 6, 6.1, 30, 200]) {
      expect(chiSquaredTail(value, 4) / (Math.exp(-value / 2) * (1 + value / 2))).toBeCloseTo(1, 12);
    }
  });

  test('holds everything at 0', () => {
    expect(chiSquaredTail(0, 3)).toBe(1);
  });

  test.each([
    [-1, 2],
    [Number.NaN, 2],
    [1, 0],
    [1, -2],
    [1, 2.5],
    [0, 0],
  ])('of %f with %f degrees of freedom is none', (value, degrees) => {
    expect(chiSquaredTail(value, degrees)).toBeNaN();
  });
});

test('a quantile is where the tail holds the rest', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 0.999, noNaN: true }),
      fc.integer({ min: 1, max: 60 }),
      (p, degrees) => {
        expect(chiSquaredTail(chiSquaredQuantile(p, degrees), degrees)).toBeCloseTo(1 - p, 11);
      },
    ),
  );
});

test('with two degrees of freedom a quantile is a logarithm, to the last digits', () => {
  for (const p of [1e-6, 0.01, 0.5, 0.99]) {
    expect(chiSquaredQuantile(p, 2) / (-2 * Math.log1p(-p))).toBeCloseTo(1, 9);
  }
});
