import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import { describe } from '../../statistics/describe.ts';
import { normalQuantile } from '../../statistics/normal-quantile.ts';
import { type RandomSource, randomSource } from '../../statistics/random.ts';
import { studentTDistribution } from '../../statistics/student-t.ts';
import { rounded } from '../../units/rounded.ts';
import type { ReducedResult } from '../reduction.ts';
import type { ReadingNoise } from './reading-noise.ts';
import type { Gauge, SurveyPlace } from './survey-place.ts';

const draws = 4000;
/** The interval is to hold the ovality of a round strand as often as it holds any other. */
const roundChance = 0.025;

/**
 * The ovality of a strand: the mean of the unsigned difference of two axes along it (as the out-of-roundness of
 * ISO 11922-1, from memory; the axes need not be the extreme ones, so the largest may be more). The unsigned differences of readings are
 * larger than those of the strand, whose mean would not be 0 for a round one: so the signed differences are taken as
 * normal, with a mean and a variance of which the noise of reading is a part, and what is left of them is averaged without
 * sign (JCGM 101:2008, clause 7). Where chance explains the differences, the interval begins at 0.
 */
export function ovalityResult(
  places: readonly SurveyPlace[],
  { resolution }: Gauge,
  noise: ReadingNoise,
): ReducedResult {
  const random = randomSource('diameterSurvey ovality');
  const { count, mean, standardDeviation } = describe(places.map(({ difference }) => difference));
  const freedom = count - 1;
  const alike = standardDeviation < resolution / 2 ? 1 : 1 / Math.sqrt(count);
  const found = {
    low: new Float64Array(draws),
    value: new Float64Array(draws),
    high: new Float64Array(draws),
  };
  for (let index = 0; index < draws; index++) {
    const whole = (freedom * standardDeviation ** 2) / (2 * random.gamma(freedom / 2));
    const middle =
      mean +
      Math.sqrt(whole / count) * random.normal() +
      resolution * (random.uniform() - random.uniform()) * alike;
    const { least, usual, most } = noise.draw(random, whole);
    const left = (variance: number) => unsignedMean(middle, Math.sqrt(Math.max(0, whole - variance)));
    const value = left(usual);
    found.value[index] = value;
    found.low[index] = most === usual ? value : left(most);
    found.high[index] = least === usual ? value : left(least);
  }
  const end = (of: Float64Array, share: number) => rounded(drawnQuantiles(of, [share])[0] ?? 0);
  const low = mayBeRound(places, noise, random) ? 0 : end(found.low, 0.025);
  return {
    quantity: 'ovality',
    dimension: 'length',
    value: end(found.value, 0.5),
    interval: { low, high: end(found.high, 0.975), coverage: 0.95 },
    censored: null,
  };
}

const evenNormals = Float64Array.from({ length: 24 }, (_, index) => normalQuantile((index + 0.5) / 24));

/** Mean of the unsigned values of a normal distribution. */
function unsignedMean(mean: number, standardDeviation: number): number {
  if (standardDeviation === 0) return Math.abs(mean);
  let sum = 0;
  for (const each of evenNormals) sum += Math.abs(mean + standardDeviation * each);
  return sum / evenNormals.length;
}

/**
 * Whether chance explains the differences: their mean by the scatter about it (Student's t), and, where the noise of reading
 * is known, their squares by that noise too.
 */
function mayBeRound(places: readonly SurveyPlace[], noise: ReadingNoise, random: RandomSource): boolean {
  const differences = places.map(({ difference }) => difference);
  const { count, mean, standardDeviation } = describe(differences);
  const ofMean =
    mean === 0
      ? 1
      : 2 * studentTDistribution((-Math.abs(mean) * Math.sqrt(count)) / standardDeviation, count - 1);
  if (!noise.isKnown) return ofMean >= roundChance;
  const squares = differences.reduce((sum, difference) => sum + difference ** 2, 0);
  let asMuch = 0;
  for (let draw = 0; draw < draws; draw++) {
    if (noise.draw(random, 0).usual * 2 * random.gamma(count / 2) >= squares) asMuch += 1;
  }
  // Each of two tests errs half as often as both together may.
  return ofMean >= roundChance / 2 && asMuch / draws >= roundChance / 2;
}
