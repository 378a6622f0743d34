import { describe } from '../../statistics/describe.ts';
import type { RandomSource } from '../../statistics/random.ts';

/** All readings at one setting. */
export interface SeriesStep {
  readonly x: number;
  readonly mean: number;
  readonly count: number;
  /** Sum of the squared deviations from the mean. */
  readonly squares: number;
}

/** How far readings can be off, in the unit of the readings. */
export interface SeriesNoise {
  /** Standard deviation of a repeat, as far as it is known before any reading. */
  readonly usualScatter: number;
  /** Step of the display at a step of the series. */
  readonly resolution: (step: SeriesStep) => number;
}

/** Readings gathered by setting, ascending; the order of the readings makes no difference. */
export function seriesSteps(x: readonly number[], y: readonly number[]): SeriesStep[] {
  const byX = new Map<number, number[]>();
  const pairs = x.map((at, index) => [at, y[index] ?? Number.NaN] as const);
  for (const [at, value] of pairs.toSorted((one, other) => one[0] - other[0] || one[1] - other[1])) {
    const values = byX.get(at);
    if (values === undefined) byX.set(at, [value]);
    else values.push(value);
  }
  return [...byX].map(([at, values]) => {
    const { count, mean, standardDeviation } = describe(values);
    return { x: at, mean, count, squares: count > 1 ? standardDeviation ** 2 * (count - 1) : 0 };
  });
}

/** What is known of the scatter beforehand counts as much as so many degrees of freedom. */
const priorWeight = 4;

/** What is known of the variance of a reading: sum of squares over degrees of freedom. */
function knownScatter(steps: readonly SeriesStep[], usualScatter: number) {
  return {
    freedom: steps.reduce((sum, { count }) => sum + count - 1, priorWeight),
    squares: steps.reduce((sum, step) => sum + step.squares, priorWeight * usualScatter ** 2),
  };
}

/** Variances of the means of all steps, by scatter and rounding. */
export function stepVariances(
  steps: readonly SeriesStep[],
  { usualScatter, resolution }: SeriesNoise,
): number[] {
  const { freedom, squares } = knownScatter(steps, usualScatter);
  return steps.map((step) => squares / freedom / step.count + resolution(step) ** 2 / 12);
}

/** Draws the means of all steps into a room of their number. */
type MeansDrawer = (random: RandomSource, means: Float64Array) => void;

/**
 * Draws the means of all steps from the state of knowledge that the readings leave: normal scatter whose variance is
 * known from all repeats together and from `usualScatter` (scaled inverse chi-square; Gelman et al., Bayesian Data
 * Analysis, 3rd ed., 3.3), and the rounding of the display, which repeats that read alike share (JCGM 101:2008, 6.4.2).
 */
export function meansDrawer(steps: readonly SeriesStep[], noise: SeriesNoise): MeansDrawer {
  const { freedom, squares } = knownScatter(steps, noise.usualScatter);
  const known = steps.map((step) => {
    const resolution = noise.resolution(step);
    const alike = step.squares < resolution ** 2 / 4;
    const root = Math.sqrt(step.count);
    return { mean: step.mean, root, resolution, unshared: alike ? 1 : 1 / root };
  });
  return (random, means) => {
    const scatter = Math.sqrt(squares / (2 * random.gamma(freedom / 2)));
    let step = 0;
    for (const { mean, root, resolution, unshared } of known) {
      const rounding = resolution * (random.uniform() - 0.5) * unshared;
      means[step] = mean + (scatter / root) * random.normal() + rounding;
      step += 1;
    }
  };
}

/** Standard normal quantiles of 1/6, 1/2 and 5/6. */
const thirds = [-0.9674, 0, 0.9674];

/**
 * Variances of the means of all steps under three equally likely sizes of the scatter (the quantiles of chi-squared by
 * Wilson and Hilferty, Proceedings of the National Academy of Sciences 17 (1931) 684-688); repeats that read alike share the
 * rounding of the display.
 */
export function possibleVariances(
  steps: readonly SeriesStep[],
  { usualScatter, resolution }: SeriesNoise,
): number[][] {
  const { freedom, squares } = knownScatter(steps, usualScatter);
  const part = 2 / (9 * freedom);
  return thirds.map((deviate) => {
    const scatter = squares / (freedom * (1 - part + deviate * Math.sqrt(part)) ** 3);
    return steps.map((step) => {
      const display = resolution(step);
      const unshared = step.squares < display ** 2 / 4 ? 1 : step.count;
      return scatter / step.count + display ** 2 / 12 / unshared;
    });
  });
}
