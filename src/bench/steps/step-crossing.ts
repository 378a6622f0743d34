import { nonDecreasingFit } from '../../statistics/monotone-regression.ts';

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

/** Values that rise to a peak and fall beyond it. */
interface PeakedFit {
  readonly values: readonly number[];
  /** Position of the peak. */
  readonly peak: number;
}

/**
 * Weighted least-squares fit of values that rise and then fall: the best over all places of the peak of a rising and
 * a falling part (Frisén, "Unimodal regression", The Statistician 35 (1986) 479-485).
 */
export function peakedFit(values: readonly number[], weights: readonly number[]): PeakedFit {
  const fits = values.map((_, peak) => {
    const rising = nonDecreasingFit(values.slice(0, peak + 1), weights.slice(0, peak + 1));
    const fallen = nonDecreasingFit(
      values.slice(peak + 1).map((value) => -value),
      weights.slice(peak + 1),
    ).map((value) => -value);
    const fit = [...rising, ...fallen];
    const misfit = fit.reduce(
      (sum, value, index) => sum + (weights[index] ?? 0) * (value - (values[index] ?? 0)) ** 2,
      0,
    );
    return { fit, misfit };
  });
  const least = fits.reduce((best, one) => (one.misfit < best.misfit ? one : best));
  return { values: least.fit, peak: least.fit.indexOf(Math.max(...least.fit)) };
}
