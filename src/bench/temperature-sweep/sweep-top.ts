import { median } from '../../statistics/middle.ts';
import { positionOfHighest } from '../../statistics/monotone-regression.ts';
import type { SmoothCurves } from '../../statistics/smooth-curves.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import type { SeriesStep } from '../steps/step-series.ts';
import { passingFrom } from './sweep-window.ts';

/** What counts as a dip, as a share of the depth from the best to what is accepted, and in how many curves it must be. */
const dips = { measured: { depth: 0.25, told: 0.75 }, graded: { depth: 0.5, told: 0.55 } };

/**
 * A top is flat whose width at the accepted depth is more than this share of its width at three times that depth, in so
 * many curves; of a parabola it is 0.58.
 */
const flat = { share: 0.66, told: 0.2 };
const fewestFaultless = 3;

/** What to say of a top with two peaks, or of a flat one; `graded` are the steps where they hold grades. */
export function topWarnings(
  curves: SmoothCurves,
  level: (best: number) => number,
  graded: readonly SeriesStep[] | null,
): string[] {
  const dip = dipBetween(curves, level, graded === null ? dips.measured : dips.graded);
  if (dip !== null) {
    return [
      `The readings have two peaks with a dip near ${shown(dip)} between them. The window is that around the higher one, and reaches across the dip only as far as it is shallow: add specimens there, and look for what changes (cooling, moisture).`,
    ];
  }
  return graded === null ? flatWarnings(curves, level) : faultlessWarnings(graded);
}

const shown = (temperature: number) => formatQuantity(temperature, 'temperature', { significantDigits: 3 });

/** Where the deepest dip between two peaks lies; null where not enough curves have one. */
function dipBetween(
  { grid, count, values }: SmoothCurves,
  level: (best: number) => number,
  { depth, told }: (typeof dips)[keyof typeof dips],
): number | null {
  const places: number[] = [];
  for (let draw = 0; draw < count; draw++) {
    const curve = values.subarray(draw * grid.length, (draw + 1) * grid.length);
    const { deepest, place } = deepestDip(curve);
    const best = curve[positionOfHighest(curve)] ?? Number.NaN;
    if (deepest > depth * (best - level(best))) places.push(grid[place] ?? Number.NaN);
  }
  return places.length > told * count ? median(places) : null;
}

/** The place that lies furthest below higher ones on both sides. */
function deepestDip(curve: Float64Array): { readonly deepest: number; readonly place: number } {
  const behind = new Float64Array(curve.length);
  let highest = Number.NEGATIVE_INFINITY;
  for (let place = curve.length - 1; place >= 0; place--) {
    highest = Math.max(highest, curve[place] ?? 0);
    behind[place] = highest;
  }
  let [deepest, found] = [0, 0];
  highest = Number.NEGATIVE_INFINITY;
  for (let place = 0; place < curve.length; place++) {
    highest = Math.max(highest, curve[place] ?? 0);
    const depth = Math.min(highest, behind[place] ?? 0) - (curve[place] ?? 0);
    if (depth <= deepest) continue;
    deepest = depth;
    found = place;
  }
  return { deepest, place: found };
}

function flatWarnings({ grid, count, values }: SmoothCurves, level: (best: number) => number): string[] {
  let [found, all] = [0, 0];
  for (let draw = 0; draw < count; draw++) {
    const curve = values.subarray(draw * grid.length, (draw + 1) * grid.length);
    const peak = positionOfHighest(curve);
    const best = curve[peak] ?? Number.NaN;
    const width = (times: number) => {
      const at = best - times * (best - level(best));
      return passingFrom(grid, curve, peak, 1, at) - passingFrom(grid, curve, peak, -1, at);
    };
    const wide = width(3);
    if (!Number.isFinite(wide)) continue;
    all += 1;
    if (width(1) > flat.share * wide) found += 1;
  }
  return all > count / 2 && found > flat.told * all
    ? [
        'The top is flat: the readings hardly differ around the best and fall off steeply on both sides, so they do not tell a best temperature. Add temperatures where they fall, and take one from the middle of the window.',
      ]
    : [];
}

/** Grades that are faultless over several temperatures tell no best one. */
function faultlessWarnings(steps: readonly SeriesStep[]): string[] {
  const faultless = steps.filter(({ mean }) => mean === 5);
  const [first, last] = [faultless[0], faultless.at(-1)];
  if (first === undefined || last === undefined || faultless.length < fewestFaultless) return [];
  return [
    `The top is flat: the specimens are faultless at temperatures from ${shown(first.x)} to ${shown(last.x)}, so the grades do not tell a best one. Measured strengths would.`,
  ];
}
