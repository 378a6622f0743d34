import { positionOfHighest } from '../../statistics/monotone-regression.ts';
import type { SmoothCurves } from '../../statistics/smooth-curves.ts';
import type { ReducedResult } from '../reduction.ts';
import { crossingResult } from '../steps/crossing-result.ts';

/**
 * Both ends of the window around the best temperature; `x` are the temperatures that were tested. The accepted level
 * is counted from the likeliest best temperature, because the highest place of each curve lies too high where the top is
 * flat. A curve that nowhere reaches the level leaves both ends at its best.
 */
export function sweepWindow(
  { grid, count, values }: SmoothCurves,
  x: readonly number[],
  level: (best: number) => number,
): ReducedResult[] {
  const [low, high] = [new Float64Array(count), new Float64Array(count)];
  const likeliestPeak = positionOfHighest(meanCurve({ grid, count, values }));
  for (let draw = 0; draw < count; draw++) {
    const curve = values.subarray(draw * grid.length, (draw + 1) * grid.length);
    const peak = positionOfHighest(curve);
    const accepted = Math.min(curve[peak] ?? Number.NaN, level(curve[likeliestPeak] ?? Number.NaN));
    low[draw] = passingFrom(grid, curve, peak, -1, accepted);
    high[draw] = passingFrom(grid, curve, peak, 1, accepted);
  }
  return [
    crossingResult('lowestNozzleTemperature', 'temperature', low, x),
    crossingResult('highestNozzleTemperature', 'temperature', high, x),
  ];
}

/** The mean of all curves. */
function meanCurve({ grid, count, values }: SmoothCurves): Float64Array {
  return Float64Array.from(grid, (_, point) => {
    let sum = 0;
    for (let draw = 0; draw < count; draw++) sum += values[draw * grid.length + point] ?? 0;
    return sum / count;
  });
}

/** Where a curve falls to a level, going from a place of the grid to one side; infinite where it does not. */
export function passingFrom(
  grid: readonly number[],
  curve: Float64Array,
  from: number,
  side: 1 | -1,
  level: number,
): number {
  for (let place = from + side; place >= 0 && place < grid.length; place += side) {
    const [here, before] = [curve[place] ?? Number.NaN, curve[place - side] ?? Number.NaN];
    if (here >= level) continue;
    const [near, far] = [grid[place - side] ?? Number.NaN, grid[place] ?? Number.NaN];
    return near + ((far - near) * (before - level)) / (before - here);
  }
  return side * Number.POSITIVE_INFINITY;
}
