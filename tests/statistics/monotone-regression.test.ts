import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nonDecreasingFit } from '../../src/statistics/monotone-regression.ts';

const ones = (count: number) => Array<number>(count).fill(1);
const series = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 1, maxLength: 30 });

test('pools neighbours that are out of order', () => {
  expect(nonDecreasingFit([1, 3, 2, 4], ones(4))).toEqual([1, 2.5, 2.5, 4]);
});

test('a heavier reading pulls its pool', () => {
  expect(nonDecreasingFit([3, 0], [1, 2])).toEqual([1, 1]);
});

test('leaves an ordered series as it is', () => {
  fc.assert(
    fc.property(series, (values) => {
      const ordered = values.toSorted((one, other) => one - other);
      expect(nonDecreasingFit(ordered, ones(ordered.length))).toEqual(ordered);
    }),
  );
});

test('never falls, and keeps the weighted mean', () => {
  fc.assert(
    fc.property(series, (values) => {
      const fit = nonDecreasingFit(values, ones(values.length));
      for (const [index, value] of fit.entries())
        expect(value).toBeGreaterThanOrEqual(fit[index - 1] ?? value);
      const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);
      expect(sum(fit)).toBeCloseTo(sum(values), 8);
    }),
  );
});

test('refuses weights that do not fit', () => {
  expect(() => nonDecreasingFit([1, 2], [1])).toThrow(RangeError);
  expect(() => nonDecreasingFit([1], [0])).toThrow(RangeError);
});
