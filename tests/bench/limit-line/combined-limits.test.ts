import { expect, test } from 'vitest';
import { combinedLimits } from '../../../src/bench/limit-line/combined-limits.ts';

function point(temperature: number, limit: number, half = 1) {
  return { temperature, limit, low: limit - half, high: limit + half };
}

test('one trial keeps its own limit and interval, and temperatures come coldest first', () => {
  const lopsided = { temperature: 230, limit: 30, low: 28, high: 31 };
  expect(combinedLimits([lopsided, point(210, 20)])).toEqual([
    { ...point(210, 20), trials: 1 },
    { ...lopsided, trials: 1 },
  ]);
});

test('two trials that agree have a mean that is surer by √2', () => {
  const [combined] = combinedLimits([point(230, 30), point(230, 30)]);
  expect(combined?.limit).toBeCloseTo(30, 12);
  expect(combined!.high - combined!.limit).toBeCloseTo(1 / Math.SQRT2, 9);
  expect(combined?.trials).toBe(2);
});

test('a surer trial counts for more', () => {
  const [combined] = combinedLimits([point(230, 30, 1), point(230, 31, 2)]);
  expect(combined?.limit).toBeCloseTo(30.2, 9);
});

test('trials that scatter by more than their intervals make it less sure', () => {
  const [combined] = combinedLimits([point(230, 10), point(230, 50)]);
  expect(combined?.limit).toBeCloseTo(30, 9);
  // About one degree of freedom: t95 is 12.71 (JCGM 100:2008, table G.2); the standard deviation of the mean is 20.
  expect((combined!.high - combined!.limit) / (12.71 * 20)).toBeCloseTo(1, 1);
});
