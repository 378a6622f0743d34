import { describe, expect, test } from 'vitest';
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

test('a level of 0 is never reached: it goes on over a plain until its evaluations are used up', () => {
  let calls = 0;
  const plain = () => {
    calls += 1;
    return 7;
  };
  climbSimplex(plain, [0], [1], { evaluations: 30, level: 0 });
  expect(calls).toBeGreaterThanOrEqual(30);
});

test('is not level while any corner is lower than the best two', () => {
  const roof = ([x = 0]: readonly number[]) => -((x - 3) ** 2);
  const { point, height } = climbSimplex(roof, [2, 0], [-1, 1], end);
  expect(height).toBeCloseTo(0, 6);
  expect(point[0]).toBeCloseTo(3, 3);
});

/** Corners are at 0 and 1 with the heights 0 and 3; the places that are asked after them, by the rules of Nelder and Mead. */
describe('moves', () => {
  test.each([
    [
      'a reflection above the best is stretched, and the higher of the two is kept',
      { 2: 4, 3: 5 },
      [2, 3, 5],
    ],
    ['a stretch that is no higher than the reflection is not kept', { 2: 4, 3: 4 }, [2, 3, 3]],
    ['a reflection that is just as high as the best is not stretched', { 2: 3, 1.5: 3.5 }, [2, 1.5]],
    ['a reflection above the worst is drawn in on its own side', { 2: 1, 1.5: 2 }, [2, 1.5, 0.5]],
    ['one that is no higher than the worst, on the side of the worst', { 2: 0, 0.5: 2 }, [2, 0.5, 1.5]],
    ['what is drawn in and no higher than the reflection is not kept', { 2: 2, 1.5: 1 }, [2, 1.5, 0.5, 1.5]],
  ])('%s', (_, heights: Readonly<Record<number, number>>, places) => {
    const known: Readonly<Record<number, number>> = { 0: 0, 1: 3, ...heights };
    const asked: number[] = [];
    const height = ([x = 0]: readonly number[]) => {
      asked.push(x);
      return known[x] ?? 0;
    };
    climbSimplex(height, [0], [1], { evaluations: 12, level: 0.1 });
    expect(asked.slice(2, 2 + places.length)).toEqual(places);
  });
});

test('without an axis stays at its start', () => {
  expect(climbSimplex(() => 3, [], [], { evaluations: 10, level: 0 })).toEqual({ point: [], height: 3 });
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
