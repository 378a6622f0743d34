import { normalFactor } from '../../src/statistics/scatter.ts';

/** The 95 % interval of a share that was counted, by Wilson (Journal of the American Statistical Association 22 (1927) 209-212). */
export function wilsonInterval(found: number, all: number): { readonly low: number; readonly high: number } {
  if (all === 0) return { low: 0, high: 1 };
  const share = found / all;
  const square = normalFactor ** 2 / all;
  const middle = (share + square / 2) / (1 + square);
  const half = (normalFactor * Math.sqrt((share * (1 - share)) / all + square / (4 * all))) / (1 + square);
  return { low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
