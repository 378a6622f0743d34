import { expect, test } from 'vitest';
import { propagate } from '../../src/statistics/monte-carlo.ts';

const run = (seed: string) =>
  propagate({
    inputs: {
      length: { kind: 'normal', mean: 100, standardUncertainty: 0.3 },
      width: { kind: 'rectangular', low: 9.9, high: 10.1 },
    },
    model: ({ length, width }) => length * width,
    draws: 20_000,
    seed,
  });

test('carries the inputs through the model', () => {
  const area = run('area');
  expect(area.mean).toBeCloseTo(1000, 0);
  // √((10·0.3)² + (100·0.1/√3)²)
  expect(area.standardUncertainty).toBeCloseTo(6.51, 1);
});

test('the same seed gives the same draws', () => {
  expect(run('area').sorted).toEqual(run('area').sorted);
  expect(run('area').sorted).not.toEqual(run('another').sorted);
});

test('the draws come in ascending order', () => {
  const { sorted } = run('area');
  expect(sorted).toEqual(sorted.toSorted());
});
