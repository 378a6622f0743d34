import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import { fitMonotone, PeakedFit, Pools } from '../../statistics/monotone-regression.ts';
import { type RandomSource, randomSource } from '../../statistics/random.ts';
import { rounded } from '../../units/rounded.ts';
import { meansDrawer, type SeriesNoise, type SeriesStep } from './step-series.ts';

/** How the readings go with the setting. */
type Course = 'rising' | 'falling' | 'peaked';

/** Courses that the readings leave possible, each in a row of its own with a place for every step. */
export interface CourseDraws {
  readonly count: number;
  /** How many steps there are. */
  readonly size: number;
  readonly values: Float64Array;
  /** Positions of the highest values. */
  readonly peaks: Float64Array;
  /** How the curves bow between two steps, -1 to 1. */
  readonly bows: Float64Array;
}

/** JCGM 101:2008, 7.2 asks for some 10 000 draws a digit of the ends; three digits of a bench reading need fewer. */
const count = 4000;

/** Draws courses of a series by the Monte Carlo method, or those of a fit of its own; `seed` names the stream of random numbers. */
export function courseDraws(
  steps: readonly SeriesStep[],
  noise: SeriesNoise,
  course: Course | CourseFit,
  seed: string,
): CourseDraws {
  const random = randomSource(seed);
  const drawMeans = meansDrawer(steps, noise);
  const follow = typeof course === 'string' ? courseFit(course, steps) : course;
  const size = steps.length;
  const values = new Float64Array(count * size);
  const [peaks, bows] = [new Float64Array(count), new Float64Array(count)];
  const [means, fitted] = [new Float64Array(size), new Float64Array(size)];
  for (let draw = 0; draw < count; draw++) {
    drawMeans(random, means);
    peaks[draw] = follow(means, fitted, random);
    bows[draw] = 2 * random.uniform() - 1;
    values.set(fitted, draw * size);
  }
  return { count, size, values, peaks, bows };
}

/** Fits values by a course into a room of their number, and returns the position of the highest one. */
export type CourseFit = (values: Float64Array, fit: Float64Array, random: RandomSource) => number;

function courseFit(course: Course, steps: readonly SeriesStep[]): CourseFit {
  const weights = steps.map((step) => step.count);
  if (course === 'peaked') {
    const peaked = new PeakedFit(weights);
    return (values, fit) => peaked.fit(values, fit);
  }
  const pools = new Pools(course === 'rising' ? 1 : -1);
  const highest = course === 'rising' ? steps.length - 1 : 0;
  return (values, fit) => {
    fitMonotone(pools, values, weights, fit);
    return highest;
  };
}

/** The median course and its pointwise 95 % band at the steps, for plots; `shown` turns values into readings. */
export function courseBand(
  steps: readonly Pick<SeriesStep, 'x'>[],
  { values, size, count: all }: Pick<CourseDraws, 'values' | 'size' | 'count'>,
  shown: (value: number) => number,
) {
  const points = steps.map(({ x }, index) => {
    const here = Float64Array.from({ length: all }, (_, draw) =>
      shown(values[draw * size + index] ?? Number.NaN),
    );
    const [low = 0, middle = 0, high = 0] = drawnQuantiles(here, [0.025, 0.5, 0.975]).map((end) =>
      rounded(end),
    );
    return { x, low, middle, high };
  });
  return {
    fit: points.map(({ x, middle }) => ({ x, y: middle })),
    band: points.map(({ x, low, high }) => ({ x, low, high })),
  };
}
