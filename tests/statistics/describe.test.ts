import fc from 'fast-check';
import { expect, describe as group, test } from 'vitest';
import { compensatedSum, describe } from '../../src/statistics/describe.ts';

group('describe', () => {
  test('counts, averages and takes the deviation with n - 1', () => {
    expect(describe([2, 4, 4, 4, 5, 5, 7, 9])).toMatchObject({ count: 8, mean: 5 });
    expect(describe([1, 2, 3, 4]).standardDeviation).toBeCloseTo(Math.sqrt(5 / 3), 14);
  });

  test('an alternating series has a lag-1 autocorrelation near -1', () => {
    expect(describe([1, -1, 1, -1, 1, -1, 1, -1]).autocorrelation).toBeCloseTo(-7 / 8, 14);
  });

  test('a single reading has no deviation', () => {
    expect(describe([3]).standardDeviation).toBeNaN();
  });

  test('a mean that no number stands for leaves the deviation right', () => {
    // Half-way between these two there is no number, and neighbours of it are as far away as the readings are.
    expect(describe([1e16, 1e16 + 2]).standardDeviation).toBeCloseTo(Math.SQRT2, 14);
  });

  test('a shift by a power of two far above the readings costs no digit of the deviation', () => {
    const readings = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 2, maxLength: 50 });
    fc.assert(
      fc.property(readings, (values) => {
        const shifted = describe(values.map((value) => value + 2 ** 40));
        expect(shifted.standardDeviation).toBeCloseTo(describe(values).standardDeviation, 9);
      }),
    );
  });
});

test('a compensated sum keeps what a plain one loses', () => {
  expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
});
