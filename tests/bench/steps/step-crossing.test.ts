import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fallingCrossing, risingCrossing } from '../../../src/bench/steps/step-crossing.ts';

const x = [10, 20, 30, 40];

test('a straight course is crossed where it is straight', () => {
  expect(risingCrossing(x, [1, 2, 3, 4], 2.5, 0)).toBeCloseTo(25, 12);
  expect(fallingCrossing(x, [4, 3, 2, 1], 2.5, 0)).toBeCloseTo(25, 12);
});

test('a level outside of the course is crossed before the first step or beyond the last', () => {
  expect(risingCrossing(x, [1, 2, 3, 4], 0.5, 0)).toBe(Number.NEGATIVE_INFINITY);
  expect(risingCrossing(x, [1, 2, 3, 4], 4.5, 0)).toBe(Number.POSITIVE_INFINITY);
});

test('however the course bows, the crossing stays between the two steps that bracket it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: 2.001, max: 3, noNaN: true }),
      (bow, level) => {
        const at = risingCrossing(x, [1, 2, 3, 4], level, bow);
        expect(at).toBeGreaterThan(20);
        expect(at).toBeLessThanOrEqual(30);
        const share = (at - 20) / 10;
        expect(2 + share + bow * share * (1 - share)).toBeCloseTo(level, 9);
      },
    ),
  );
});
