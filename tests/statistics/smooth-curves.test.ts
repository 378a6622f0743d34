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
