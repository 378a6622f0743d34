import { expect, test } from 'vitest';
import { findRoot } from '../../src/statistics/find-root.ts';

const range = { low: -10, high: 10 };

test('finds roots of straight, bent and nearly level functions', () => {
  expect(findRoot((x) => 3 * x - 6, range, { at: 0, slope: 3 }, 1e-12)).toBeCloseTo(2, 10);
  expect(findRoot((x) => x ** 3 - 8, range, { at: 0, slope: 1 }, 1e-12)).toBeCloseTo(2, 10);
  expect(findRoot((x) => Math.atan(x + 9), range, { at: 9, slope: 1 }, 1e-12)).toBeCloseTo(-9, 10);
  expect(findRoot((x) => Math.expm1(5 * (x - 1)), range, { at: -8, slope: 1e-9 }, 1e-9)).toBeCloseTo(1, 8);
});

test('ends at an end of the bracket where there is no root within', () => {
  expect(findRoot((x) => x + 20, range, { at: 0, slope: 1 }, 1e-9)).toBeCloseTo(-10, 6);
  expect(findRoot((x) => x - 20, range, { at: 0, slope: 1 }, 1e-9)).toBeCloseTo(10, 6);
});

test('comes as close as was asked', () => {
  const value = (x: number) => Math.exp(x) - 2;
  for (const accuracy of [1e-2, 1e-5, 1e-10]) {
    expect(Math.abs(value(findRoot(value, range, { at: 3, slope: 1 }, accuracy)))).toBeLessThanOrEqual(
      accuracy,
    );
  }
});

test('asks a straight function twice, and one that is level enough once', () => {
  let asked = 0;
  const line = (x: number) => {
    asked += 1;
    return 2 * x - 6;
  };
  expect(findRoot(line, range, { at: 0, slope: 2 }, 1e-12)).toBe(3);
  expect(asked).toBe(2);
  expect(findRoot(line, range, { at: 4, slope: 2 }, 2)).toBe(4);
  expect(asked).toBe(3);
});

test('halves the bracket where a secant would leave it', () => {
  const asked: number[] = [];
  const step = (x: number) => {
    asked.push(x);
    return x < 7 ? -1 : 1;
  };
  findRoot(step, range, { at: 0, slope: 0.01 }, 0.5);
  expect(asked.slice(0, 4)).toEqual([0, 5, 7.5, 6.25]);
  expect(asked.length).toBeLessThanOrEqual(61);
});
