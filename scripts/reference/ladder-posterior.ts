import type { RandomSource } from '../../src/statistics/random.ts';
import { driftOfDrive, type LadderBench, ladderLikelihood } from './ladder-likelihood.ts';
import { type OnsetFamily, onsetFamilies } from './onset-families.ts';
import { type CandidateModel, type SamplerEffort, samplePosterior } from './sequential-sampler.ts';

/** One curve that the readings leave possible. */
export interface PossibleCurve {
  /** Where the deficit crosses the tolerance, mm3/s. */
  readonly limit: number;
  /** Deficit against the lowest steps at a flow in mm3/s. */
  readonly deficit: (flow: number) => number;
  /** Ratio of the lowest steps. */
  readonly baseline: number;
  /** Fall of the delivered share from the lowest step to the limit that is no part of the onset. */
  readonly drift: number;
}

/** As it was when trials were reduced by this sampler. */
export const usualEffort: SamplerEffort = {
  startingDraws: 10_000,
  particles: 1000,
  movesPerStage: 8,
  finalRounds: 3,
};

/** Repeatability of a weighed extrusion: half a hundredth within a factor of two or so (common practice, no source). */
export const usualRepeatability = Math.log(0.005);
export const repeatabilitySpread = 0.7;

/** How far outside of the tested flows a limit is looked for. */
const below = 0.9;
const above = 1.35;

/**
 * Draws curves from the state of knowledge that the readings leave: Bayes' theorem over the onset families, their
 * shapes, the limit, repeatability and drift (JCGM 101:2008, 6.2), then every draw carried through to where its
 * deficit crosses the tolerance (7.4).
 */
export function possibleCurves(
  bench: LadderBench,
  tolerance: number,
  random: RandomSource,
  effort = usualEffort,
): PossibleCurve[] {
  const candidates = onsetFamilies.map((family) => candidateModel(family, bench, tolerance));
  const draws = samplePosterior(candidates, effort, random);
  return draws.flatMap(({ model, point }) => {
    const family = onsetFamilies[model];
    return family === undefined ? [] : (drawCurve(family, point, bench, tolerance, random) ?? []);
  });
}

/** Coordinates: logarithms of the limit and of the repeatability, then the shape's. */
function candidateModel(family: OnsetFamily, bench: LadderBench, tolerance: number): CandidateModel {
  const lowest = Math.log(below * (bench.steps[0]?.flow ?? Number.NaN));
  const highest = Math.log(above * (bench.steps.at(-1)?.flow ?? Number.NaN));
  return {
    drawPrior: (random) => [
      lowest + (highest - lowest) * random.uniform(),
      usualRepeatability + repeatabilitySpread * random.normal(),
      ...family.drawShape(random),
    ],
    logPrior: ([logLimit = Number.NaN, logRepeatability = Number.NaN, ...shape]) =>
      logLimit >= lowest && logLimit <= highest
        ? family.logPrior(shape) - 0.5 * ((logRepeatability - usualRepeatability) / repeatabilitySpread) ** 2
        : Number.NEGATIVE_INFINITY,
    logLikelihood: ([logLimit = Number.NaN, logRepeatability = Number.NaN, ...shape]) => {
      const limit = Math.exp(logLimit);
      const curve = family.curve(limit, tolerance, shape);
      if (curve === null) return Number.NEGATIVE_INFINITY;
      // The sampler takes models for equally probable beforehand.
      return Math.log(family.weight) + ladderLikelihood(bench, curve, limit, logRepeatability).logLikelihood;
    },
  };
}

/** Draws the drift and the flow that stands for the lowest steps of a curve; null where a shape has no such limit. */
export function drawCurve(
  family: OnsetFamily,
  [logLimit = Number.NaN, logRepeatability = Number.NaN, ...shape]: readonly number[],
  bench: LadderBench,
  tolerance: number,
  random: RandomSource,
): PossibleCurve | null {
  const onsetLimit = Math.exp(logLimit);
  const curve = family.curve(onsetLimit, tolerance, shape);
  if (curve === null) return null;
  const fit = ladderLikelihood(bench, curve, onsetLimit, logRepeatability);
  const drive = driftOfDrive(fit, bench.orderByFlow);
  const drift = drive.mean + drive.spread * random.normal();
  const first = bench.steps[0]?.flow ?? Number.NaN;
  // Which flow stands for "the lowest steps" is a matter of definition: as far below the first step as above it.
  const reference = Math.min(2 * first, onsetLimit) * random.uniform();
  const delivered = (flow: number) =>
    Math.exp((-drift * (flow - reference)) / onsetLimit) * (1 - curve(flow));
  const deficit = (flow: number) => 1 - delivered(flow) / (1 - curve(first));
  return {
    limit: crossing(deficit, tolerance, 0.5 * first, 2 * onsetLimit),
    deficit,
    baseline: Math.exp(fit.plateau - (drift * (reference - first)) / onsetLimit) * (1 - curve(first)),
    drift: (drift * (onsetLimit - first)) / onsetLimit,
  };
}

/** Where a deficit reaches the tolerance, by bisection to a few parts in 10^8. */
function crossing(deficit: (flow: number) => number, tolerance: number, low: number, high: number): number {
  let [before, after] = [low, high];
  for (let step = 0; step < 26; step++) {
    const middle = (before + after) / 2;
    if (deficit(middle) < tolerance) before = middle;
    else after = middle;
  }
  return (before + after) / 2;
}
