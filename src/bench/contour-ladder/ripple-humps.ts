import { Pools } from '../../statistics/monotone-regression.ts';
import { randomSource } from '../../statistics/random.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import type { ReducedResult } from '../reduction.ts';
import type { CourseFit } from '../steps/step-draws.ts';
import { type SeriesNoise, type SeriesStep, stepVariances } from '../steps/step-series.ts';

/** A ripple that rises to a peak and falls again, as at a resonance. */
interface Hump {
  /** Place of the step at the peak. */
  readonly peak: number;
  /** Place of the step that lies furthest below it beyond. */
  readonly fallen: number;
  /** That it is one, and no chance. */
  readonly probability: number;
}

/** Odds against a hump beforehand (common practice, no source). */
const oddsAgainst = 50;
const leastProbability = 0.02;

/**
 * Where the ripple falls again past a peak, ascending; `worse` is 1 where higher readings are worse and -1 for grades. Two
 * steps whose difference is z standard deviations speak for a fall by exp(z²/2), the largest ratio of likelihoods.
 */
export function ripplesHumps(steps: readonly SeriesStep[], noise: SeriesNoise, worse: 1 | -1): Hump[] {
  const variances = stepVariances(steps, noise);
  const size = steps.map(({ mean }) => worse * mean);
  const between = (first: number, end: number): Hump[] => {
    const hump = deepestFall(size, variances, first, end);
    if (hump === null || hump.probability < leastProbability) return [];
    return [...between(first, hump.peak + 1), hump, ...between(hump.fallen, end)];
  };
  return between(0, steps.length);
}

/** The fall among the steps from `first` to before `end` that chance explains least; null where nothing falls. */
function deepestFall(
  size: readonly number[],
  variances: readonly number[],
  first: number,
  end: number,
): Hump | null {
  let deepest = 0;
  let found: readonly [number, number] | null = null;
  for (let peak = first; peak < end; peak++) {
    for (let fallen = peak + 1; fallen < end; fallen++) {
      const spread = Math.sqrt((variances[peak] ?? 0) + (variances[fallen] ?? 0));
      const fall = ((size[peak] ?? 0) - (size[fallen] ?? 0)) / spread;
      if (fall <= deepest) continue;
      deepest = fall;
      found = [peak, fallen];
    }
  }
  if (found === null) return null;
  const odds = Math.exp(deepest ** 2 / 2) / oddsAgainst;
  return {
    peak: found[0],
    fallen: found[1],
    probability: odds === Number.POSITIVE_INFINITY ? 1 : odds / (1 + odds),
  };
}

/**
 * Fits ripples that never fall between humps, and holds the height of a hump from there on: what falls again past a peak
 * is no margin. A hump counts in as many draws as it is probable.
 */
export function humpedFit(steps: readonly SeriesStep[], humps: readonly Hump[], worse: 1 | -1): CourseFit {
  const weights = steps.map(({ count }) => count);
  const pools = new Pools(worse);
  return (values, fit, random) => {
    const ends = humps.flatMap(({ peak, probability }) => (random.uniform() < probability ? peak + 1 : []));
    let from = 0;
    for (const end of [...ends, values.length]) {
      pools.restart(from).pushAll(values, weights, end);
      pools.putFit(fit);
      from = end;
    }
    for (let place = 1; place < fit.length; place++) {
      const [before, here] = [fit[place - 1] ?? 0, fit[place] ?? 0];
      if (worse * before > worse * here) fit[place] = before;
    }
    return worse === 1 ? values.length - 1 : 0;
  };
}

/** Largest share of the gap before the step at a peak by which the peak itself may come earlier. */
const earliest = 0.7;

/**
 * Draws of a crossing in the gap that rises to a hump, made earlier in place: the hump has its peak at some speed near the
 * step that is highest, and may rise steeply before it. `x` are the speeds of the steps.
 */
export function bringForward(crossings: Float64Array, x: readonly number[], humps: readonly Hump[]): void {
  if (humps.length === 0) return;
  const random = randomSource('contourLadder humps');
  for (let draw = 0; draw < crossings.length; draw++) {
    const at = crossings[draw] ?? Number.NaN;
    const early = random.uniform();
    for (const { peak, probability } of humps) {
      const [before = Number.NaN, highest = Number.NaN] = [x[peak - 1], x[peak]];
      if (at > before && at <= highest)
        crossings[draw] = before + (at - before) * (1 - earliest * probability * early);
    }
  }
}

/** Probability beyond which a hump is told. */
const told = 0.9;

/** What to say of humps beside a limit in mm/s. */
export function humpWarnings(
  steps: readonly SeriesStep[],
  humps: readonly Hump[],
  { value, censored }: ReducedResult,
): string[] {
  const speedAt = (place: number) => steps[place]?.x ?? Number.NaN;
  const shown = (place: number) => formatQuantity(speedAt(place), 'speed', { significantDigits: 4 });
  return humps.flatMap(({ peak, fallen, probability }) => {
    if (probability <= told) return [];
    const course = `The ripple rises to a peak at ${shown(peak)} and falls again by ${shown(fallen)}, as at a resonance`;
    const isBelow = censored === 'below' || (censored === null && value <= speedAt(peak));
    return isBelow
      ? `${course}: the limit lies below the peak, since what falls again past it is no margin; another corner, weight or belt tension moves it.`
      : `${course}: the peak itself is accepted here, but another corner, weight or belt tension may raise it.`;
  });
}
