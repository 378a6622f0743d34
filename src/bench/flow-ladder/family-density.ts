import type { NestedNode } from '../../statistics/nested-integral.ts';
import type { Range } from '../../units/canonical.ts';
import type { LadderLikelihood } from './ladder-likelihood.ts';
import type { OnsetFamily } from './onset-families.ts';

/** Prior times likelihood of one family; coordinates are the logarithm of the limit in mm3/s, then the shape's. */
export interface FamilyDensity {
  /** Along the last coordinate, the others being given; the drift stands aside. */
  readonly along: (outer: readonly number[]) => (last: number) => NestedNode;
  /** Its logarithm at a point. */
  readonly height: (point: readonly number[]) => number;
  /** The same of a shape by its limit, were readings to repeat poorly: broad hills, which lead to the narrow ones. */
  readonly roughly: (shape: readonly number[]) => (logLimit: number) => number;
}

/** The density of a family over limits whose logarithms lie in a range. */
export function familyDensity(
  family: OnsetFamily,
  likelihood: LadderLikelihood,
  { low, high }: Range,
  tolerance: number,
): FamilyDensity {
  const isInside = (logLimit: number) => logLimit >= low && logLimit <= high;
  const along = ([logLimit = Number.NaN, ...shape]: readonly number[]) => {
    const onsets = family.onsets(shape, tolerance);
    return (last: number) => {
      const onset = isInside(logLimit) ? onsets(last) : null;
      if (onset === null) return { at: last, log: Number.NEGATIVE_INFINITY, aside: 0, inner: null };
      const fit = likelihood.fit(onset, logLimit);
      const log = family.logWeight + onset.logPrior + fit.logLikelihood;
      return { at: last, log, aside: fit.drift, inner: null };
    };
  };
  return {
    along,
    height: (point) => along(point.slice(0, -1))(point.at(-1) ?? Number.NaN).log,
    roughly: (shape) => {
      const onset = family.onsets(shape.slice(0, -1), tolerance)(shape.at(-1) ?? Number.NaN);
      return (logLimit) =>
        onset !== null && isInside(logLimit)
          ? onset.logPrior + likelihood.roughly(onset, logLimit)
          : Number.NEGATIVE_INFINITY;
    },
  };
}
