import { expect, test } from 'vitest';
import { climbSimplex } from '../../src/statistics/simplex-climb.ts';

const end = { evaluations: 400, level: 1e-9 };

test('reaches the top of a hill', () => {
  const hill = ([x = 0, y = 0]: readonly number[]) => 5 - (x - 3) ** 2 - 10 * (y + 1) ** 2;
  const { point, height } = climbSimplex(hill, [0, 0], [1, 1], end);
  expect(height).toBeCloseTo(5, 6);
  expect(point[0]).toBeCloseTo(3, 3);
  expect(point[1]).toBeCloseTo(-1, 3);
});

test('follows a bent ridge (Rosenbrock 1960, turned upside down)', () => {
  const ridge = ([x = 0, y = 0]: readonly number[]) => -((1 - x) ** 2) - 100 * (y - x * x) ** 2;
  const { point } = climbSimplex(ridge, [-1.2, 1], [0.5, 0.5], end);
  expect(point[0]).toBeCloseTo(1, 2);
  expect(point[1]).toBeCloseTo(1, 2);
});

test('stays where the height is known', () => {
  const halfPlane = ([x = 0]: readonly number[]) => (x < 0 ? Number.NEGATIVE_INFINITY : -x);
  const { point, height } = climbSimplex(halfPlane, [2], [1], end);
  expect(point[0]).toBeGreaterThanOrEqual(0);
  expect(height).toBeGreaterThan(-1e-3);
});

test('keeps about to its evaluations, and stops on level ground', () => {
  let calls = 0;
  const counted = (height: (x: number) => number) => (point: readonly number[]) => {
    calls += 1;
    return height(point[0] ?? 0);
  };
  climbSimplex(
    counted((x) => x),
    [0],
    [1],
    { evaluations: 30, level: 0 },
  );
  expect(calls).toBeGreaterThanOrEqual(30);
  expect(calls).toBeLessThan(36);
  calls = 0;
  climbSimplex(
    counted(() => 7),
    [0],
    [1],
    { evaluations: 30, level: 0.1 },
  );
  expect(calls).toBe(2);
});

test('begins at the start and a step from it along each axis', () => {
  const asked: (readonly number[])[] = [];
  const height = (point: readonly number[]) => {
    asked.push(point);
    return 0;
  };
  climbSimplex(height, [1, 2], [3, -4], { evaluations: 50, level: 0.1 });
  expect(asked.toSorted()).toEqual([
    [1, -2],
    [1, 2],
    [4, 2],
  ]);
});

test.each([
  [0, 0],
  [0.001, 0.005],
  [0.006, 0.001],
])('draws in to a narrow summit beside the start: %f, %f', (x, y) => {
  const cone = ([a = 0, b = 0]: readonly number[]) => Math.max(0, 1 - 100 * Math.hypot(a - 0.003, b - 0.003));
  const { point, height } = climbSimplex(cone, [x, y], [1, 1], end);
  expect(height).toBeGreaterThan(0.999);
  expect(point[0]).toBeCloseTo(0.003, 4);
  expect(point[1]).toBeCloseTo(0.003, 4);
});

test('draws in towards the best corner, not past it', () => {
  const asked: number[] = [];
  const spike = ([x = 0]: readonly number[]) => {
    asked.push(x);
    return x === 2 ? 1 : 0;
  };
  climbSimplex(spike, [2], [8], { evaluations: 5, level: 0.1 });
  // Two corners, the reflection, half-way back, and the corner drawn in.
  expect(asked).toEqual([10, 2, -6, 6, 6]);
});

test('is on top of a round hill after a few dozen evaluations', () => {
  const hill = (point: readonly number[]) => -point.reduce((sum, part) => sum + (part - 5) ** 2, 0);
  const { height } = climbSimplex(hill, [0, 0], [1, 1], { evaluations: 60, level: 0 });
  expect(height).toBeGreaterThan(-1e-3);
});
