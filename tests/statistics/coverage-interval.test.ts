import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  drawnQuantiles,
  quantile,
  shortestInterval,
  sortedDraws,
  symmetricInterval,
} from '../../src/statistics/coverage-interval.ts';

const hundred = sortedDraws(Array.from({ length: 101 }, (_, index) => 100 - index));

test('quantiles interpolate between draws', () => {
  expect(quantile(hundred, 0.5)).toBe(50);
  expect(quantile(hundred, 0.025)).toBeCloseTo(2.5, 12);
  expect(quantile(hundred, 1)).toBe(100);
});

test('quantiles of draws in any order are those of the sorted ones', () => {
  const draws = fc.array(
    fc.oneof(fc.double({ noNaN: true, min: -9, max: 9 }), fc.integer({ min: 0, max: 3 })),
    {
      minLength: 1,
      maxLength: 200,
    },
  );
  const probabilities = [0, 0.025, 0.05, 0.5, 0.95, 0.975, 1];
  fc.assert(
    fc.property(draws, (given) => {
      const sorted = sortedDraws(given);
      expect(drawnQuantiles(given, probabilities)).toEqual(
        probabilities.map((probability) => quantile(sorted, probability)),
      );
    }),
  );
});

test('the symmetric interval leaves equal tails', () => {
  const { low, high, coverage } = symmetricInterval(hundred, 0.9);
  expect(low).toBeCloseTo(5, 12);
  expect(high).toBeCloseTo(95, 12);
  expect(coverage).toBe(0.9);
});

test('the shortest interval of a skewed distribution begins where the draws are dense', () => {
  const skewed = sortedDraws(Array.from({ length: 1001 }, (_, index) => (index / 1000) ** 3));
  const shortest = shortestInterval(skewed, 0.9);
  expect(shortest.low).toBe(0);
  expect(shortest.high).toBeLessThan(symmetricInterval(skewed, 0.9).high);
});

test('a quantile stays within the draws, and there is none of no draws', () => {
  expect([quantile(hundred, -0.1), quantile(hundred, 0), quantile(hundred, 1.1)]).toEqual([0, 0, 100]);
  expect([quantile(sortedDraws([]), 0.5), ...drawnQuantiles([], [0.5])]).toEqual([NaN, NaN]);
  expect(quantile(sortedDraws([7]), 0.3)).toBe(7);
});

test('draws are sorted as numbers', () => {
  expect([...sortedDraws([10, 9, -1, 100])]).toEqual([-1, 9, 10, 100]);
});

// JCGM 101:2008, 7.7.4: of the intervals that hold q = pM draws the shortest; the first of several.
test('the shortest interval is the first of those that hold the share of the draws', () => {
  const draws = sortedDraws([0, 5, 6, 7, 8, 9, 20, 21, 22, 40]);
  expect(shortestInterval(draws, 0.4)).toEqual({ low: 5, high: 9, coverage: 0.4 });
  expect(shortestInterval(draws, 0.2)).toEqual({ low: 5, high: 7, coverage: 0.2 });
  expect(shortestInterval(draws, 0.1)).toEqual({ low: 5, high: 6, coverage: 0.1 });
  expect(shortestInterval(draws, 1)).toEqual({ low: 0, high: 40, coverage: 1 });
  expect(shortestInterval(sortedDraws([0, 10, 18, 19]), 0.25)).toMatchObject({ low: 18, high: 19 });
});
