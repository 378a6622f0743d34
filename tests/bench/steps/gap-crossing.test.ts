import { describe, expect, test } from 'vitest';
import { gapCrossing } from '../../../src/bench/steps/gap-crossing.ts';
import { randomSource } from '../../../src/statistics/random.ts';

const crossing = (values: readonly number[], level: number, bend = 0.5, place = 0.5) =>
  gapCrossing([0, 1, 2, 3], Float64Array.from(values), level, { bend, place, straight: bend ** 2 });

describe('where a course reaches a level between two steps', () => {
  test('is on the line where the slopes beside the gap are its own', () => {
    expect(crossing([0, 1, 2, 3], 1.25)).toBeCloseTo(1.25, 12);
  });

  test('may be anywhere where one gap holds all of the change', () => {
    const random = randomSource('gap');
    const places = Array.from({ length: 2000 }, () =>
      crossing([0, 0, 1, 1], 0.5, random.uniform(), random.uniform()),
    );
    expect(Math.min(...places)).toBeLessThan(1.02);
    expect(Math.max(...places)).toBeGreaterThan(1.98);
  });

  test('moves away from the level side, and never out of the gap', () => {
    expect(crossing([0, 0, 1, 3], 0.5, 0)).toBeCloseTo(1.5, 12);
    expect(crossing([0, 0, 1, 3], 0.5, 0.999)).toBeGreaterThan(1.99);
    expect(crossing([0, 0, 1, 3], 0.5, 1)).toBeLessThanOrEqual(2);
    expect(crossing([0, 2, 3, 3], 2.5, 0.999)).toBeLessThan(1.01);
  });

  test('is beyond the ends where no step lies on the other side', () => {
    expect(crossing([0, 1, 2, 3], 4)).toBe(Number.POSITIVE_INFINITY);
    expect(crossing([0, 1, 2, 3], -1)).toBe(Number.NEGATIVE_INFINITY);
  });
});
