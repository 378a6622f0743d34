import { normalFactor as z } from '../src/statistics/scatter.ts';

/**
 * 95 % interval of a share that was seen in some of so many cases, as fractions.
 * Source: E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209-212.
 */
export function wilsonInterval(seen: number, of: number): readonly [low: number, high: number] {
  if (of === 0) return [0, 1];
  const share = seen / of;
  const weight = 1 + z ** 2 / of;
  const centre = (share + z ** 2 / (2 * of)) / weight;
  const half = (z / weight) * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2));
  return [Math.max(0, centre - half), Math.min(1, centre + half)];
}
