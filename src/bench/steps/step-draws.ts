import { quantile, sortedDraws } from '../../statistics/coverage-interval.ts';
import { nonDecreasingFit, peakedFit } from '../../statistics/monotone-regression.ts';
import { randomSource } from '../../statistics/random.ts';
import { rounded } from '../../units/rounded.ts';
import { meansDrawer, type SeriesNoise, type SeriesStep } from './step-series.ts';

/** How the readings go with the setting. */
type Course = 'rising' | 'falling' | 'peaked';

/** One course that the readings leave possible. */
export interface CourseDraw {
  /** The means as drawn, before they are made to follow the course. */
  readonly drawn: readonly number[];
  readonly values: readonly number[];
  /** Position of the highest value. */
  readonly peak: number;
  /** How the curve bows between two steps, -1 to 1. */
  readonly bow: number;
}

/** JCGM 101:2008, 7.2 asks for some 10 000 draws a digit of the ends; three digits of a bench reading need fewer. */
const draws = 4000;

/** Draws courses of a series by the Monte Carlo method; `seed` names the stream of random numbers. */
export function courseDraws(
  steps: readonly SeriesStep[],
  noise: SeriesNoise,
  course: Course,
  seed: string,
): CourseDraw[] {
  const random = randomSource(seed);
  const drawMeans = meansDrawer(steps, noise);
  const weights = steps.map(({ count }) => count);
  return Array.from({ length: draws }, () => {
    const drawn = drawMeans(random);
    const { values, peak } = fitted(drawn, weights, course);
    return { drawn, values, peak, bow: 2 * random.uniform() - 1 };
  });
}

function fitted(values: readonly number[], weights: readonly number[], course: Course) {
  if (course === 'peaked') return peakedFit(values, weights);
  if (course === 'rising') {
    const fit = nonDecreasingFit(values, weights);
    return { values: fit, peak: fit.length - 1 };
  }
  const fallen = nonDecreasingFit(
    values.map((value) => -value),
    weights,
  );
  return { values: fallen.map((value) => -value), peak: 0 };
}

/** The median course and its pointwise 95 % band at the steps, for plots; `shown` turns values into readings. */
export function courseBand(
  steps: readonly SeriesStep[],
  all: readonly CourseDraw[],
  shown: (value: number) => number,
) {
  const points = steps.map(({ x }, index) => {
    const sorted = sortedDraws(all.map(({ values }) => shown(values[index] ?? Number.NaN)));
    const [low = 0, middle = 0, high = 0] = [0.025, 0.5, 0.975].map((share) =>
      rounded(quantile(sorted, share)),
    );
    return { x, low, middle, high };
  });
  return {
    fit: points.map(({ x, middle }) => ({ x, y: middle })),
    band: points.map(({ x, low, high }) => ({ x, low, high })),
  };
}
