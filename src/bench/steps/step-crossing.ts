/**
 * Where a monotone curve through the steps (x ascending, y never falling) reaches a level: -Infinity where it is
 * reached before the first step, Infinity where it is not reached by the last. Between two steps the curve is the
 * parabola through both that bows by `bow`: from -1 to 1 all of them are monotone, and 0 is the straight line.
 */
export function risingCrossing(
  x: readonly number[],
  y: readonly number[],
  level: number,
  bow: number,
): number {
  const after = y.findIndex((value) => value >= level);
  if (after === -1) return Number.POSITIVE_INFINITY;
  if (after === 0) return Number.NEGATIVE_INFINITY;
  const [low, high] = [y[after - 1] ?? Number.NaN, y[after] ?? Number.NaN];
  const [start, end] = [x[after - 1] ?? Number.NaN, x[after] ?? Number.NaN];
  const share = (level - low) / (high - low);
  // The root of bow·u² - (1 + bow)·u + share = 0 in 0..1, in the form that holds for a bow of 0.
  const root = (2 * share) / (1 + bow + Math.sqrt((1 + bow) ** 2 - 4 * bow * share));
  // Rounding must not carry a root of 1 beyond its step.
  return Math.min(start + (end - start) * root, end);
}

/** As `risingCrossing`, for values that never rise: where they fall to the level. */
export function fallingCrossing(
  x: readonly number[],
  y: readonly number[],
  level: number,
  bow: number,
): number {
  return risingCrossing(
    x,
    y.map((value) => -value),
    -level,
    bow,
  );
}
