import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nonDecreasingFit, PeakedFit, positionOfHighest } from '../../src/statistics/monotone-regression.ts';

const ones = (count: number) => Array<number>(count).fill(1);
const series = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 1, maxLength: 30 });

function peakedFit(values: readonly number[], weights: readonly number[]) {
  const fit = new Float64Array(values.length);
  const peak = new PeakedFit(weights).fit(Float64Array.from(values), fit);
  return { values: [...fit], peak };
}

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
  expect(() => nonDecreasingFit([1, 2], [1])).toThrow(new RangeError('one weight per value'));
  expect(() => nonDecreasingFit([1], [1, 2])).toThrow(new RangeError('one weight per value'));
  for (const weight of [0, -1, Number.NaN])
    expect(() => nonDecreasingFit([1], [weight])).toThrow(new RangeError('weights must be positive'));
});

test('a peaked fit rises to its peak, falls beyond, and leaves what does so already', () => {
  expect(peakedFit([1, 3, 5, 4], [1, 1, 1, 1])).toEqual({ values: [1, 3, 5, 4], peak: 2 });
  const { values, peak } = peakedFit([1, 4, 3, 5, 2], [1, 1, 1, 1, 1]);
  expect(values).toEqual([1, 3.5, 3.5, 5, 2]);
  expect(peak).toBe(3);
});

test('of several peaks that do as well, the first is taken', () => {
  expect(peakedFit([2, 1, 2], [1, 1, 1])).toEqual({ values: [2, 1.5, 1.5], peak: 0 });
  expect(positionOfHighest(Float64Array.of(1, 3, 3, 2))).toBe(1);
});

test('a peaked fit is the best over all places of the peak', () => {
  fc.assert(
    fc.property(series, (values) => {
      const misfit = (fit: readonly number[]) =>
        fit.reduce((sum, level, index) => sum + (level - values[index]!) ** 2, 0);
      const fits = values.map((_, peak) => [
        ...nonDecreasingFit(values.slice(0, peak + 1), ones(peak + 1)),
        ...nonDecreasingFit(
          values.slice(peak + 1).map((value) => -value),
          ones(values.length - peak - 1),
        ).map((value) => -value),
      ]);
      const least = Math.min(...fits.map(misfit));
      expect(misfit(peakedFit(values, ones(values.length)).values)).toBeCloseTo(least, 6);
    }),
    { numRuns: 100, seed: 5 },
  );
});
