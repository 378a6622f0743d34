import { describe } from '../../src/statistics/describe.ts';
import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import { type LadderBench, ladderLikelihood } from './ladder-likelihood.ts';
import { drawCurve, repeatabilitySpread, usualRepeatability } from './ladder-posterior.ts';
import { onsetFamilies } from './onset-families.ts';

/** The limit's quantile in mm3/s with the standard error of the count of draws. */
export interface RefereedQuantile {
  readonly value: number;
  readonly standardError: number;
}

interface WeightedLimit {
  readonly limit: number;
  readonly logWeight: number;
}

/** Limits whose likelihood is less than the best by e to that power are left out. */
const negligible = 12;
/** The standard error is taken from so many parts of the draws. */
const batches = 10;

/**
 * Quantiles of the limit by draws from the prior, each with the weight of its likelihood: slow and plain, with nothing
 * in it that could miss a part of the posterior (JCGM 101:2008, 6.2; Gelman et al., Bayesian Data Analysis, 3rd ed.,
 * 10.4). Limits are drawn from a range in mm3/s that must hold all that count.
 */
export function refereedQuantiles(
  bench: LadderBench,
  tolerance: number,
  range: { readonly low: number; readonly high: number },
  draws: number,
  probabilities: readonly number[],
): RefereedQuantile[] {
  const random = randomSource('referee');
  const weighted: WeightedLimit[] = [];
  let best = Number.NEGATIVE_INFINITY;
  for (let draw = 0; draw < draws; draw++) {
    const drawn = drawLimit(bench, tolerance, range, draw, random, best - negligible);
    if (drawn === null) continue;
    weighted.push(drawn);
    best = Math.max(best, drawn.logWeight);
  }
  const parts = Array.from({ length: batches }, (_, part) =>
    weighted.filter((_each, index) => index % batches === part),
  );
  return probabilities.map((probability) => ({
    value: weightedQuantile(weighted, best, probability),
    standardError:
      describe(parts.map((part) => weightedQuantile(part, best, probability))).standardDeviation /
      Math.sqrt(batches),
  }));
}

function drawLimit(
  bench: LadderBench,
  tolerance: number,
  { low, high }: { readonly low: number; readonly high: number },
  draw: number,
  random: RandomSource,
  least: number,
): WeightedLimit | null {
  const family = onsetFamilies[draw % onsetFamilies.length];
  if (family === undefined) return null;
  const logLimit = Math.log(low) + Math.log(high / low) * random.uniform();
  const logRepeatability = usualRepeatability + repeatabilitySpread * random.normal();
  const shape = family.drawShape(random);
  const curve = family.curve(Math.exp(logLimit), tolerance, shape);
  if (curve === null) return null;
  const { logLikelihood } = ladderLikelihood(bench, curve, Math.exp(logLimit), logRepeatability);
  if (!(logLikelihood > least)) return null;
  const drawn = drawCurve(family, [logLimit, logRepeatability, ...shape], bench, tolerance, random);
  return drawn === null ? null : { limit: drawn.limit, logWeight: Math.log(family.weight) + logLikelihood };
}

function weightedQuantile(limits: readonly WeightedLimit[], best: number, probability: number): number {
  const sorted = limits.toSorted((one, other) => one.limit - other.limit);
  const weights = sorted.map(({ logWeight }) => Math.exp(logWeight - best));
  let rest = probability * weights.reduce((sum, weight) => sum + weight, 0);
  const place = weights.findIndex((weight) => {
    rest -= weight;
    return rest <= 0;
  });
  return sorted[place]?.limit ?? Number.NaN;
}
