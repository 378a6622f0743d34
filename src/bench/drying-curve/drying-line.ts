import type { RandomSource } from '../../statistics/random.ts';
import type { DryingData } from './drying-data.ts';
import type { DryingFamily } from './drying-families.ts';

/**
 * Readings against a shape of drying: the mass is a straight line over the share of the water that is left, so that the dry
 * mass and the water follow by linear least squares from whatever the shape is.
 */
export interface DryingLine {
  /** ln of the likelihood of a shape, with masses and scatter integrated out; up to a constant. */
  readonly logLikelihood: (family: DryingFamily, point: Float64Array) => number;
  /** Masses in g that a shape leaves possible (multivariate t; JCGM 101:2008, 6.4.8). */
  readonly draw: (
    family: DryingFamily,
    point: Float64Array,
    random: RandomSource,
  ) => { readonly dryMass: number; readonly water: number; readonly last: number };
}

/** What is known of the scatter beforehand, a step of the scale or so, counts as much as so many degrees of freedom. */
const priorWeight = 1;

/** Water at the start, as a multiple of the mass lost, beyond which a drying has hardly begun. */
const mostTimesTheLoss = 100;

/** Null where the mass changes by less than the scale can show. */
export function dryingLine({ resolution, ...readings }: DryingData): DryingLine | null {
  const { times, masses } = gathered(readings);
  const lightest = Math.min(...masses);
  if (Math.max(...masses) - lightest < 2 * resolution) return null;
  const above = masses.map((mass) => mass - lightest);
  const last = Math.max(...times);
  const shares = Float64Array.from(times, (time) => time / last);
  const count = times.length;
  const mostWater = mostTimesTheLoss * Math.max(...above);
  const mean = above.reduce((sum, mass) => sum + mass, 0) / count;
  const squares = above.reduce((sum, mass) => sum + (mass - mean) ** 2, 0);
  const known = priorWeight * resolution ** 2;
  const freedom = count - 2 + priorWeight;
  const left = new Float64Array(count);

  const fitted = (family: DryingFamily, point: Float64Array) => {
    family.putLeft(point, shares, left);
    let sum = 0;
    for (let index = 0; index < count; index++) sum += left[index] ?? 0;
    const meanLeft = sum / count;
    let [spread, products] = [0, 0];
    for (let index = 0; index < count; index++) {
      const away = (left[index] ?? 0) - meanLeft;
      spread += away * away;
      products += away * (above[index] ?? 0);
    }
    const water = products / spread;
    return { meanLeft, spread, water, misfit: Math.max(0, squares - water * products) + known };
  };
  return {
    logLikelihood: (family, point) => {
      const { water, misfit } = fitted(family, point);
      return water > 0 && water < mostWater ? (-freedom / 2) * Math.log(misfit) : Number.NEGATIVE_INFINITY;
    },
    draw: (family, point, random) => {
      const { meanLeft, spread, water: likeliest, misfit } = fitted(family, point);
      const scatter = Math.sqrt(misfit / (2 * random.gamma(freedom / 2)));
      const water = likeliest + (scatter / Math.sqrt(spread)) * random.normal();
      const middle = mean + (scatter / Math.sqrt(count)) * random.normal();
      return { dryMass: lightest + middle - water * meanLeft, water, last };
    },
  };
}

type Readings = Pick<DryingData, 'times' | 'masses'>;

/** Readings of a log, of which more tell nothing further about a drying. */
const mostReadings = 60;

/** Readings in order of time; those of a long log as means of as many neighbours each. */
function gathered({ times, masses }: Readings): Readings {
  if (times.length <= mostReadings) return { times, masses };
  const order = times.map((_, index) => index).sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0));
  const size = Math.ceil(order.length / mostReadings);
  const groups = Array.from({ length: Math.floor(order.length / size) }, (_, group) =>
    order.slice(group * size, (group + 1) * size),
  );
  const meanOf = (values: readonly number[], group: readonly number[]) =>
    group.reduce((sum, index) => sum + (values[index] ?? 0), 0) / group.length;
  return {
    times: groups.map((group) => meanOf(times, group)),
    masses: groups.map((group) => meanOf(masses, group)),
  };
}
