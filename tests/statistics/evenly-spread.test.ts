import { expect, test } from 'vitest';
import { evenlySpread } from '../../src/statistics/evenly-spread.ts';

const count = 1000;
const dimensions = [0, 1, 2, 3];
const coordinates = (dimension: number) =>
  Array.from({ length: count }, (_, index) => evenlySpread(index + 1, dimension));

test('fills every dimension more evenly than chance', () => {
  for (const dimension of dimensions) {
    const sorted = coordinates(dimension).sort((one, other) => one - other);
    const farthest = Math.max(...sorted.map((value, index) => Math.abs(value - (index + 0.5) / count)));
    // Of independent points it would be about 0.027 (Kolmogorov).
    expect(farthest).toBeLessThan(0.005);
    expect(sorted[0]).toBeGreaterThanOrEqual(0);
    expect(sorted.at(-1)).toBeLessThan(1);
  }
});

test('averages products of two dimensions', () => {
  for (const [one, other] of [
    [0, 1],
    [1, 2],
    [2, 3],
  ] as const) {
    const others = coordinates(other);
    const mean = coordinates(one).reduce((sum, value, index) => sum + value * others[index]!, 0) / count;
    expect(mean).toBeCloseTo(0.25, 2);
  }
});

test('has four dimensions, of multiples of a root each', () => {
  expect(evenlySpread(1, 0)).toBeCloseTo(Math.SQRT2 - 1, 15);
  expect(evenlySpread(3, 1)).toBeCloseTo(Math.sqrt(27) - 5, 14);
  expect(dimensions.map((dimension) => evenlySpread(1, dimension))).not.toContain(Number.NaN);
  expect(evenlySpread(1, 4)).toBeNaN();
});
