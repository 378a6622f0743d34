import { describe } from '../../statistics/describe.ts';
import type { RandomSource } from '../../statistics/random.ts';
import type { Gauge, SurveyPlace } from './survey-place.ts';

/** What the noise of reading adds to the variance of a place's difference of two axes, mm2. */
interface NoiseVariances {
  readonly least: number;
  readonly usual: number;
  readonly most: number;
}

/** How far readings are off by chance. */
export interface ReadingNoise {
  /** Whether enough places were read again to tell; otherwise only its bounds are known. */
  readonly isKnown: boolean;
  /** The variances that go with one draw of the whole variance of the differences from place to place. */
  readonly draw: (random: RandomSource, whole: number) => NoiseVariances;
}

/** Fewer repeats in all say less than the bounds. */
const fewestRepeats = 4;

/**
 * The noise of reading: from places that were read again, where there are enough of them (pooled variance, JCGM 100:2008,
 * 4.2.4). Otherwise it is anything from the rounding of the gauge to all that the differences scatter by; all of it is
 * the usual case, since a strand keeps its shape over some metres.
 */
export function readingNoise(places: readonly SurveyPlace[], { resolution }: Gauge): ReadingNoise {
  // Two roundings of q²/12 (JCGM 101:2008, 6.4.2).
  const rounding = resolution ** 2 / 6;
  const spreads = places.flatMap(({ differences }) =>
    differences.length > 1 ? [describe(differences)] : [],
  );
  const freedom = spreads.reduce((sum, { count }) => sum + count - 1, 0);
  if (freedom < fewestRepeats) {
    return { isKnown: false, draw: (_, whole) => ({ least: rounding, usual: whole, most: whole }) };
  }
  const squares = spreads.reduce(
    (sum, { count, standardDeviation }) => sum + (count - 1) * standardDeviation ** 2,
    0,
  );
  const share = places.reduce((sum, { differences }) => sum + 1 / differences.length, 0) / places.length;
  return {
    isKnown: true,
    draw: (random) => {
      const variance = squares / (2 * random.gamma(freedom / 2));
      // Repeats that are rounded alike do not average out.
      const here = variance < rounding ? rounding : variance * share;
      return { least: here, usual: here, most: here };
    },
  };
}
