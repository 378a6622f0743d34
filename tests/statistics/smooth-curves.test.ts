import { describe, expect, test } from 'vitest';
import { quantile, sortedDraws } from '../../src/statistics/coverage-interval.ts';
import { randomSource } from '../../src/statistics/random.ts';
import { smoothCurves } from '../../src/statistics/smooth-curves.ts';

const x = [190, 200, 210, 220, 230, 240];
const parabola = (at: number) => 30 - 0.01 * (at - 213) ** 2;

/** Quantiles of the curves at the point of the grid nearest to a place. */
function at(place: number, variance: number, probabilities: readonly number[], y = x.map(parabola)) {
  const measured = { x, y, variances: [x.map(() => variance)] };
  const { grid, count, values } = smoothCurves(measured, 1000, randomSource('smooth'));
  const distances = grid.map((each) => Math.abs(each - place));
  const point = distances.indexOf(Math.min(...distances));
  const here = sortedDraws(
    Array.from({ length: count }, (_, draw) => values[draw * grid.length + point] ?? Number.NaN),
  );
  return { grid: grid[point] ?? Number.NaN, quantiles: probabilities.map((each) => quantile(here, each)) };
}

describe('smooth curves', () => {
  test('pass through what was measured well, and follow it in between', () => {
    expect(at(210, 1e-4, [0.5]).quantiles[0]).toBeCloseTo(parabola(210), 1);
    const between = at(214, 1e-4, [0.5]);
    expect(between.quantiles[0]).toBeCloseTo(parabola(between.grid), 1);
  });

  test('spread as far as the measurements do', () => {
    const width = (variance: number) => {
      const [low = 0, high = 0] = at(220, variance, [0.025, 0.975]).quantiles;
      return high - low;
    };
    expect(width(0.25)).toBeGreaterThan(3 * width(0.01));
    // One measurement alone has a width of 3.92 standard deviations; its neighbours make it narrower.
    expect(width(0.25)).toBeLessThan(3.92 * 0.5);
  });

  test('spread further between two places than at them where the curve is rough', () => {
    const rough = [10, 20, 11, 19, 10, 20];
    const spread = (place: number) => {
      const [low = 0, high = 0] = at(place, 0.01, [0.025, 0.975], rough).quantiles;
      return high - low;
    };
    expect(spread(205)).toBeGreaterThan(3 * spread(210));
  });

  test('spread between two places of a rough curve no further than its readings do', () => {
    const rough = [10, 20, 10, 20, 10, 20];
    const [low = 0, high = 0] = at(205, 0.01, [0.025, 0.975], rough).quantiles;
    // Their standard deviation is 5.
    expect(high - low).toBeLessThan(3.92 * 5);
  });

  test('are about as certain elsewhere when another place close to the first was measured', () => {
    const width = (places: readonly number[]) => {
      const measured = { x: places, y: places.map(parabola), variances: [places.map(() => 0.01)] };
      const { grid, values } = smoothCurves(measured, 1000, randomSource('twice'));
      const point = grid.findIndex((each) => each >= 225);
      const here = sortedDraws(
        Array.from({ length: 1000 }, (_, draw) => values[draw * grid.length + point]!),
      );
      return quantile(here, 0.975) - quantile(here, 0.025);
    };
    // One more reading says how far the curve reaches; it makes nothing twice as certain, or half.
    const ratio = width([190, 190.1, ...x.slice(1)]) / width(x);
    expect(ratio).toBeGreaterThan(0.5);
    expect(ratio).toBeLessThan(2);
  });

  test('of readings that are all alike stay level', () => {
    const [low = 0, high = 0] = at(
      215,
      0.01,
      [0.025, 0.975],
      x.map(() => 5),
    ).quantiles;
    expect(low).toBeGreaterThan(4.5);
    expect(high).toBeLessThan(5.5);
  });
});

describe('the grid', () => {
  const gridOf = (places: readonly number[]) =>
    smoothCurves({ x: places, y: places, variances: [places.map(() => 1)] }, 1, randomSource('grid')).grid;

  test('holds the places that were measured, and others evenly between them', () => {
    const grid = gridOf([0, 12, 36]);
    expect(grid).toHaveLength(25);
    expect(grid.slice(0, 13)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(grid.slice(12)).toEqual([12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36]);
    expect(gridOf([0, 24])).toEqual(Array.from({ length: 25 }, (_, at) => at));
  });

  test('of many places is these', () => {
    const many = Array.from({ length: 30 }, (_, at) => at * 2);
    expect(gridOf(many)).toEqual(many);
  });
});

describe('curves', () => {
  const y = [20, 24, 29, 30, 27, 23];
  const curves = (values: readonly number[], variance: number, count: number) =>
    smoothCurves({ x, y: values, variances: [x.map(() => variance)] }, count, randomSource('curves'));

  test('in other units are the same curves', () => {
    const plain = curves(y, 0.04, 300);
    const other = curves(
      y.map((value) => 32 + 1.8 * value),
      0.04 * 1.8 ** 2,
      300,
    );
    expect(other.values).toHaveLength(300 * plain.grid.length);
    for (const [place, value] of plain.values.entries()) {
      expect(other.values[place]).toBeCloseTo(32 + 1.8 * value, 6);
    }
  });

  test('along a place in other units are the same curves', () => {
    const scaled = (factor: number) =>
      smoothCurves(
        { x: x.map((at) => factor * at), y, variances: [x.map(() => 0.04)] },
        130,
        randomSource('units'),
      ).values;
    const plain = scaled(1);
    for (const factor of [1e-3, 1e3])
      for (const [place, value] of scaled(factor).entries()) expect(value).toBeCloseTo(plain[place]!, 6);
  });

  test('come from either of two states of knowledge alike where the readings favour neither', () => {
    const symmetric = [20, 24, 25, 25, 24, 20];
    const [left, right] = [x.map((_, at) => (at < 3 ? 1e-4 : 4)), x.map((_, at) => (at < 3 ? 4 : 1e-4))];
    const { grid, values } = smoothCurves(
      { x, y: symmetric, variances: [left, right] },
      6000,
      randomSource('states'),
    );
    let passing = 0;
    for (let start = 0; start < values.length; start += grid.length)
      if (Math.abs(values[start]! - 20) < 0.05) passing += 1;
    // Curves come in groups of 120, and one of the other state passes that near by chance now and then.
    expect(Math.abs(passing / 6000 - 0.5)).toBeLessThan(0.1);
  });

  test('through many places that are known exactly pass through all of them', () => {
    const places = Array.from({ length: 150 }, (_, at) => at);
    const exact = places.map((at) => Math.sin(at / 20));
    const known = { x: places, y: exact, variances: [places.map(() => 0)] };
    for (const [place, value] of smoothCurves(known, 1, randomSource('exact')).values.entries())
      expect(value).toBeCloseTo(exact[place]!, 2);
  });

  test.each([1, 119, 121, 250])('%f of them all pass near what was measured', (count) => {
    const { grid, values } = curves(y, 1e-6, count);
    for (let row = 0; row < count; row++) {
      for (const [index, place] of x.entries()) {
        const value = values[row * grid.length + grid.indexOf(place)]!;
        expect(Math.abs(value - y[index]!)).toBeLessThan(0.1);
      }
    }
  });

  test('of one group differ from each other by the uncertainty, and keep apart as they go', () => {
    const { grid, values } = curves(y, 0.25, 120);
    const at = (place: number) => Array.from({ length: 120 }, (_, row) => values[row * grid.length + place]!);
    const deviation = (list: readonly number[]) => {
      const middle = list.reduce((sum, value) => sum + value, 0) / list.length;
      return Math.sqrt(list.reduce((sum, value) => sum + (value - middle) ** 2, 0) / list.length);
    };
    for (let place = 1; place < grid.length; place++) {
      const [before, here] = [at(place - 1), at(place)];
      expect(deviation(here)).toBeGreaterThan(0.15);
      expect(deviation(here)).toBeLessThan(1);
      expect(deviation(here.map((value, row) => value - before[row]!))).toBeLessThan(0.6 * deviation(here));
    }
  });
});
