import type { CourseDraws } from './step-draws.ts';

/** A row of values among others, and the part of it that counts: places of the steps, the end stays out. */
interface RowPart {
  /** Where the row begins. */
  readonly row: number;
  readonly first: number;
  readonly end: number;
}

/**
 * Where a monotone curve through the steps (x ascending, y never falling) reaches a level: -Infinity where it is
 * reached before the first step, Infinity where it is not reached by the last. Between two steps the curve is the
 * parabola through both that bows by `bow`: from -1 to 1 all of them are monotone, and 0 is the straight line.
 */
export function risingCrossing(
  x: readonly number[],
  y: ArrayLike<number>,
  level: number,
  bow: number,
  part: RowPart = { row: 0, first: 0, end: x.length },
): number {
  return crossing(1, { x, y, part }, level, bow);
}

/** As `risingCrossing`, for values that never rise: where they fall to the level. */
export function fallingCrossing(
  x: readonly number[],
  y: ArrayLike<number>,
  level: number,
  bow: number,
  part: RowPart = { row: 0, first: 0, end: x.length },
): number {
  return crossing(-1, { x, y, part }, -level, bow);
}

interface Curve {
  readonly x: readonly number[];
  readonly y: ArrayLike<number>;
  readonly part: RowPart;
}

/** Where the values times a sign, which never fall, reach a level. */
function crossing(
  sign: 1 | -1,
  { x, y, part: { row, first, end } }: Curve,
  level: number,
  bow: number,
): number {
  let after = first;
  while (after < end && !(sign * (y[row + after] ?? Number.NaN) >= level)) after += 1;
  if (after === end) return Number.POSITIVE_INFINITY;
  if (after === first) return Number.NEGATIVE_INFINITY;
  const low = sign * (y[row + after - 1] ?? Number.NaN);
  const high = sign * (y[row + after] ?? Number.NaN);
  const [start, stop] = [x[after - 1] ?? Number.NaN, x[after] ?? Number.NaN];
  const share = (level - low) / (high - low);
  // The root of bow·u² - (1 + bow)·u + share = 0 in 0..1, in the form that holds for a bow of 0.
  const root = (2 * share) / (1 + bow + Math.sqrt((1 + bow) ** 2 - 4 * bow * share));
  // Rounding must not carry a root of 1 beyond its step.
  return Math.min(start + (stop - start) * root, stop);
}

/** Of each course, where it crosses a level by one of the two above. */
export function crossingsOf(
  { count, size, values, bows }: CourseDraws,
  x: readonly number[],
  level: number,
  crossingOf: typeof risingCrossing,
): Float64Array {
  const found = new Float64Array(count);
  for (let draw = 0; draw < count; draw++) {
    found[draw] = crossingOf(x, values, level, bows[draw] ?? 0, { row: draw * size, first: 0, end: size });
  }
  return found;
}
