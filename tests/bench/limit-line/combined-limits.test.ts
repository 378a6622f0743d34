import { expect, test } from 'vitest';
import { combinedLimits } from '../../../src/bench/limit-line/combined-limits.ts';

function point(temperature: number, limit: number, half = 1) {
  return { temperature, limit, low: limit - half, high: limit + half };
}

test('one trial keeps its own limit and interval, and temperatures come coldest first', () => {
  const lopsided = { temperature: 230, limit: 30, low: 28, high: 31 };
  expect(combinedLimits([lopsided, point(210, 20)])).toEqual([
    { ...point(210, 20), trials: 1, agreement: null },
    { ...lopsided, trials: 1, agreement: null },
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

test('trials that scatter by more than their intervals, but still agree, make it less sure', () => {
  const agreeing = [point(230, 30), point(230, 30.9), point(230, 31.5)];
  const [combined] = combinedLimits(agreeing);
  expect(combined?.agreement).toBeGreaterThan(0.05);
  expect(combined!.high - combined!.low).toBeGreaterThan(2 / Math.sqrt(3));
});

test('trials that disagree are not combined: the lowest stands with its own interval', () => {
  const [combined] = combinedLimits([point(230, 50), point(230, 10, 2)]);
  expect(combined).toMatchObject({ limit: 10, low: 8, high: 12, trials: 2 });
  expect(combined?.agreement).toBeLessThan(1e-6);
});
