/** Steps on each side of the highest that a parabola through the peak is fitted to. */
const reach = 2;

/**
 * The height of a peak: the top of the least-squares parabola through the highest step and two on each side. The
 * highest of several scattered means lies above the curve that they scatter about, the parabola does not. Falls back to
 * its highest fitted value where the parabola has no top among the steps. `x` ascending.
 */
export function peakLevel(x: readonly number[], y: ArrayLike<number>, peak: number): number {
  const first = Math.max(0, peak - reach);
  const end = Math.min(x.length, peak + reach + 1);
  const top = x[peak] ?? Number.NaN;
  const [height, slope, bend] = parabola(x, y, { first, end, top });
  const vertex = -slope / (2 * bend);
  const [nearest, farthest] = [(x[first] ?? Number.NaN) - top, (x[end - 1] ?? Number.NaN) - top];
  if (bend < 0 && vertex >= nearest && vertex <= farthest) return height + (slope * vertex) / 2;
  let highest = Number.NEGATIVE_INFINITY;
  for (let place = first; place < end; place++) {
    const at = (x[place] ?? Number.NaN) - top;
    highest = Math.max(highest, height + slope * at + bend * at * at);
  }
  return highest;
}

interface Stretch {
  readonly first: number;
  readonly end: number;
  /** Where the parabola has its zero on the x axis. */
  readonly top: number;
}

/** Coefficients of the least-squares parabola over a stretch, by the normal equations and Cramer's rule. */
function parabola(
  x: readonly number[],
  y: ArrayLike<number>,
  { first, end, top }: Stretch,
): readonly [number, number, number] {
  let scale = 0;
  for (let place = first; place < end; place++)
    scale = Math.max(scale, Math.abs((x[place] ?? Number.NaN) - top));
  let [s1, s2, s3, s4] = [0, 0, 0, 0];
  let [t0, t1, t2] = [0, 0, 0];
  for (let place = first; place < end; place++) {
    const u = ((x[place] ?? Number.NaN) - top) / scale;
    const value = y[place] ?? 0;
    s1 += u;
    s2 += u * u;
    s3 += u * u * u;
    s4 += u * u * u * u;
    t0 += value;
    t1 += u * value;
    t2 += u * u * value;
  }
  const s0 = end - first;
  const determinant = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  const height = t0 * (s2 * s4 - s3 * s3) - s1 * (t1 * s4 - t2 * s3) + s2 * (t1 * s3 - t2 * s2);
  const slope = s0 * (t1 * s4 - t2 * s3) - t0 * (s1 * s4 - s2 * s3) + s2 * (s1 * t2 - s2 * t1);
  const bend = s0 * (s2 * t2 - s3 * t1) - s1 * (s1 * t2 - s2 * t1) + t0 * (s1 * s3 - s2 * s2);
  return [height / determinant, slope / determinant / scale, bend / determinant / scale ** 2];
}
