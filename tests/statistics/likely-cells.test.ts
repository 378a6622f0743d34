import { describe, expect, test } from 'vitest';
import { drawFromCells, likelyCells } from '../../src/statistics/likely-cells.ts';
import { randomSource } from '../../src/statistics/random.ts';

/** Draws points of a density over a box, as lists of coordinates. */
function drawn(...[density, axes]: Parameters<typeof likelyCells>): number[][] {
  const points: number[][] = [];
  const cells = likelyCells(density, axes);
  drawFromCells(cells, density, 4000, randomSource('cells'), (point) => points.push([...point]));
  return points;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const column = (points: readonly number[][], axis: number) =>
  points.map((point) => point[axis] ?? Number.NaN);

describe('cells of a density', () => {
  test('find a summit that is far narrower than the first cells, and its spread', () => {
    const points = drawn(
      (point) => -(((point[0] ?? 0) - 0.7312) ** 2) / 2e-8,
      [{ low: 0, high: 1, cells: 8 }],
    );
    const places = column(points, 0);
    expect(mean(places)).toBeCloseTo(0.7312, 5);
    expect(Math.sqrt(mean(places.map((place) => (place - 0.7312) ** 2)))).toBeCloseTo(1e-4, 5);
  });

  test('share their draws between two summits by how much they hold', () => {
    const at = (point: Float64Array, summit: number) => -(((point[0] ?? 0) - summit) ** 2) / 0.0002;
    const points = drawn(
      (point) => Math.log(0.25 * Math.exp(at(point, 0.2)) + 0.75 * Math.exp(at(point, 0.8))),
      [{ low: 0, high: 1, cells: 10 }],
    );
    expect(mean(column(points, 0).map((place) => (place > 0.5 ? 1 : 0)))).toBeCloseTo(0.75, 1);
  });

  test('follow a narrow ridge through three coordinates', () => {
    const points = drawn(
      ([x = 0, y = 0, z = 0]) => -((x + y - 1) ** 2) / 2e-4 - (y - z) ** 2 / 2e-4,
      Array.from({ length: 3 }, () => ({ low: 0, high: 1, cells: 6 })),
    );
    expect(Math.max(...points.map(([x = 0, y = 0]) => Math.abs(x + y - 1)))).toBeLessThan(0.06);
    const places = column(points, 0);
    expect(Math.min(...places)).toBeLessThan(0.1);
    expect(Math.max(...places)).toBeGreaterThan(0.9);
  });

  test('tell the mean density over the whole box', () => {
    // A normal density of standard deviation 0.01 without its factor has an area of 0.01·√(2π).
    const { logMean } = likelyCells(
      (point) => -(((point[0] ?? 0) - 3.3) ** 2) / 2e-4,
      [{ low: 2, high: 4, cells: 10 }],
    );
    expect(Math.exp(logMean)).toBeCloseTo((0.01 * Math.sqrt(2 * Math.PI)) / 2, 4);
  });

  test('say where nothing is possible', () => {
    const { logMean } = likelyCells(() => Number.NEGATIVE_INFINITY, [{ low: 0, high: 1, cells: 4 }]);
    expect(logMean).toBe(Number.NEGATIVE_INFINITY);
  });
});
