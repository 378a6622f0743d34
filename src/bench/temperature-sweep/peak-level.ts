/** Steps on each side of the highest that a parabola through the peak is fitted to. */
const reach = 2;

/**
 * The height of a peak: the top of the least-squares parabola through the highest step and two on each side. The
 * highest of several scattered means lies above the curve that they scatter about, the parabola does not. Falls back to
 * its highest fitted value where the parabola has no top among the steps. `x` ascending.
 */
export function peakLevel(x: readonly number[], y: readonly number[], peak: number): number {
  const first = Math.max(0, peak - reach);
  const top = x[peak] ?? Number.NaN;
  const near = x.slice(first, peak + reach + 1).map((at) => at - top);
  const values = y.slice(first, peak + reach + 1);
  const [height, slope, bend] = parabola(near, values);
  const vertex = -slope / (2 * bend);
  const inside = bend < 0 && vertex >= (near[0] ?? 0) && vertex <= (near.at(-1) ?? 0);
  return inside
    ? height + (slope * vertex) / 2
    : Math.max(...near.map((at) => height + slope * at + bend * at * at));
}

/** Coefficients of the least-squares parabola, by the normal equations on centred places and Cramer's rule. */
function parabola(x: readonly number[], y: readonly number[]): readonly [number, number, number] {
  const scale = Math.max(...x.map(Math.abs));
  let [s1, s2, s3, s4] = [0, 0, 0, 0];
  let [t0, t1, t2] = [0, 0, 0];
  for (const [index, at] of x.entries()) {
    const u = at / scale;
    const value = y[index] ?? 0;
    s1 += u;
    s2 += u * u;
    s3 += u * u * u;
    s4 += u * u * u * u;
    t0 += value;
    t1 += u * value;
    t2 += u * u * value;
  }
  const s0 = x.length;
  const determinant = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  const height = t0 * (s2 * s4 - s3 * s3) - s1 * (t1 * s4 - t2 * s3) + s2 * (t1 * s3 - t2 * s2);
  const slope = s0 * (t1 * s4 - t2 * s3) - t0 * (s1 * s4 - s2 * s3) + s2 * (s1 * t2 - s2 * t1);
  const bend = s0 * (s2 * t2 - s3 * t1) - s1 * (s1 * t2 - s2 * t1) + t0 * (s1 * s3 - s2 * s2);
  return [height / determinant, slope / determinant / scale, bend / determinant / scale ** 2];
}
