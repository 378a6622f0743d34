import { expect, test } from 'vitest';
import { evenlySpread } from '../../src/statistics/evenly-spread.ts';

const count = 1000;
const points = Array.from({ length: count }, (_, index) =>
  [0, 1, 2, 3].map((dimension) => evenlySpread(index + 1, dimension)),
);

test('fills every dimension more evenly than chance', () => {
  for (const dimension of [0, 1, 2, 3]) {
    const sorted = points.map((point) => point[dimension]!).sort((one, other) => one - other);
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
    const mean = points.reduce((sum, point) => sum + point[one]! * point[other]!, 0) / count;
    expect(mean).toBeCloseTo(0.25, 2);
  }
});
