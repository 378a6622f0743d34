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

describe('cutting', () => {
  const unit = (cells: number) => ({ low: 0, high: 1, cells });
  /** The cells of a density, and how often it was asked. */
  function cut(
    log: (point: Float64Array) => number,
    axes: Parameters<typeof likelyCells>[1],
    floor?: number,
  ) {
    let looks = 0;
    const counted = (point: Float64Array) => {
      looks += 1;
      return log(point);
    };
    return { ...likelyCells(counted, axes, floor), looks };
  }
  /** The middle that is nearest to 2/3 comes nearer each time that the cells are cut. */
  const narrow = ([x = 0]: Float64Array) => -((x - 2 / 3) ** 2) / 2e-8;

  test('an even density stays as it is where its cells are many, and is cut where they are few', () => {
    expect(cut(() => 0, [unit(64)])).toMatchObject({ looks: 64, size: Float64Array.of(1 / 64) });
    const few = cut(() => 0, [unit(8)]);
    expect(few.logDensities).toHaveLength(32);
    expect([...few.middles]).toEqual(Array.from({ length: 32 }, (_, cell) => (cell + 0.5) / 32));
    expect(few.logMean).toBeCloseTo(0, 12);
  });

  test('cells lie side by side along every axis', () => {
    const { middles, size, logDensities, logMean } = cut(() => 3, [unit(2), { low: 10, high: 40, cells: 3 }]);
    expect([...size]).toEqual([0.25, 5]);
    expect(logDensities).toHaveLength(24);
    expect(middles).toHaveLength(48);
    expect(new Set(Array.from(middles).filter((_, place) => place % 2 === 0))).toEqual(
      new Set([0.125, 0.375, 0.625, 0.875]),
    );
    expect(Math.min(...middles.filter((_, place) => place % 2 === 1))).toBe(12.5);
    expect(logMean).toBeCloseTo(3, 12);
  });

  test('where nothing is possible no cell is cut', () => {
    const { logDensities } = cut(([x = 0]) => (x < 0.25 ? 0 : Number.NEGATIVE_INFINITY), [unit(4)]);
    expect(logDensities.every(Number.isFinite)).toBe(true);
  });

  test.each([1000, -1000])('a factor of e^%f makes no other difference', (factor) => {
    const plain = cut(narrow, [unit(8)]);
    const scaled = cut((point) => narrow(point) + factor, [unit(8)]);
    expect(scaled.middles).toEqual(plain.middles);
    expect(scaled.logMean - plain.logMean).toBeCloseTo(factor, 6);
  });

  test('keeps the 64 likeliest cells, and cuts each into two along every axis', () => {
    // A floor that is out of reach ends the search after one cut, since a gentle slope rises little from cell to cell.
    const slope = ([x = 0]: Float64Array) => 100 * x;
    expect(cut(slope, [unit(100)], 1e6)).toMatchObject({ looks: 100 + 128, size: Float64Array.of(1 / 200) });
    const ridge = ([x = 0, y = 0]: Float64Array) => 1000 * x - (x - y) ** 2 / 2e-12;
    expect(cut(ridge, [unit(30), unit(30)]).logDensities.length).toBeLessThanOrEqual(64 * 4);
  });

  test('of a needle end after 14 rounds', () => {
    const needle = ([x = 0]: Float64Array) => -1e12 * Math.abs(x - 1 / 3);
    expect(cut(needle, [unit(8)]).size).toEqual(Float64Array.of(1 / 8 / 2 ** 14));
  });

  test('stops early where the density stays below a floor', () => {
    const flat = ([x = 0]: Float64Array) => 0.1 * x - 5;
    expect(cut(flat, [unit(8)], 0).looks).toBeLessThan(cut(flat, [unit(8)]).looks);
    expect(cut(flat, [unit(8)], -6)).toEqual(cut(flat, [unit(8)]));
  });

  test('goes on below a floor while the best cell rises', () => {
    expect(cut(narrow, [unit(8)], -1)).toEqual(cut(narrow, [unit(8)]));
  });
});

describe('draws', () => {
  const cell = {
    middles: Float64Array.of(0.5, 10),
    logDensities: Float64Array.of(0),
    size: Float64Array.of(1, 2),
  };
  const points = (density: (point: Float64Array) => number, cells = cell) => {
    const taken: number[][] = [];
    drawFromCells({ ...cells, logMean: 0 }, density, 4000, randomSource('draws'), (point) =>
      taken.push([...point]),
    );
    return taken;
  };

  test('are as many as were asked for, spread over a cell', () => {
    const taken = points(() => 0);
    expect(taken).toHaveLength(4000);
    expect(mean(column(taken, 0))).toBeCloseTo(0.5, 1);
    expect(mean(column(taken, 1))).toBeCloseTo(10, 1);
    expect(Math.min(...column(taken, 1))).toBeCloseTo(9, 1);
    expect(Math.max(...column(taken, 1))).toBeCloseTo(11, 1);
  });

  test('follow the density within a cell: one that rises from 0 has its mean at two thirds', () => {
    expect(
      mean(
        column(
          points(([x = 0]) => Math.log(x)),
          0,
        ),
      ),
    ).toBeCloseTo(2 / 3, 1);
  });

  test('of nothing possible stay in the middle of the first cell', () => {
    expect(points(() => Number.NEGATIVE_INFINITY)[0]).toEqual([0.5, 10]);
    const two = {
      middles: Float64Array.of(1, 3),
      logDensities: Float64Array.of(0, 0),
      size: Float64Array.of(2),
    };
    expect(points(() => Number.NEGATIVE_INFINITY, two)[0]).toEqual([1]);
  });

  test('take a cell by its density whatever its scale', () => {
    const logDensities = Float64Array.of(800, 800 + Math.log(3));
    const two = { middles: Float64Array.of(1, 3), logDensities, size: Float64Array.of(2) };
    const taken = points(([x = 0]) => (x < 2 ? 800 : 800 + Math.log(3)), two);
    expect(mean(column(taken, 0).map((x) => (x > 2 ? 1 : 0)))).toBeCloseTo(0.75, 1);
  });
});
