import { failure, type Result, success } from '../../result.ts';
import { quantile, sortedDraws } from '../../statistics/coverage-interval.ts';
import { nonDecreasingFit } from '../../statistics/monotone-regression.ts';
import type { Range } from '../../units/canonical.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { Censoring, DrawnReduction, ReducedResult } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import { checkReadings, checkSettings, checkSteps } from './flow-ladder-checks.ts';
import { ladderCurve } from './flow-ladder-curve.ts';
import { type FlowLadderSettings, usualFeedLengthUncertainty } from './flow-ladder-settings.ts';
import { type LadderStep, ladderSteps, weighedPieces } from './flow-ladder-steps.ts';
import { ladderWarnings } from './flow-ladder-warnings.ts';
import { likeliestJam } from './jam-posterior.ts';
import { ladderPosterior } from './ladder-posterior.ts';
import { limitDistribution } from './limit-distribution.ts';
import { type PossibleCurve, possibleCurves } from './possible-curves.ts';
import { orderByFlow } from './run-drift.ts';
import { startDeficit } from './start-deficit.ts';

/**
 * The flow at which a hot end begins to deliver too little, from the mass that came out at rising commanded flows.
 *
 * With r = m/(ρ·A·ℓ) the deficit is s = 1 - r/r₀ against the lowest steps, so that errors of density and diameter
 * cancel. The limit is the flow where s crosses the accepted deficit. Its interval covers the scale's resolution, the
 * fed length, repeatability, r₀ and the unknown course of the curve between two steps, by carrying every onset curve that
 * the readings leave possible through to its limit (JCGM 101:2008), without random numbers.
 *
 * Where all is well at one step and much is missing at the next, the limit may be anywhere between these two.
 *
 * A ladder that never reaches the deficit gives a lower bound: `above`, with the highest flow that held. One that has
 * passed it at its first step gives an upper bound: `below`, with that flow. The numbers are the same on every machine.
 */
export function reduceFlowLadder(
  observations: Observations,
  settings: FlowLadderSettings,
): Result<DrawnReduction, readonly BenchProblem[]> {
  const problems = [...checkSettings(settings), ...checkReadings(observations)];
  if (problems.length > 0) return failure(problems);
  const readings = weighedPieces(observations, settings);
  const counted = readings.filter(({ flow }) => settings.haltedAt === undefined || flow < settings.haltedAt);
  const steps = ladderSteps(counted, settings.massResolution);
  const stepProblems = checkSteps(counted, steps);
  if (stepProblems.length > 0) return failure(stepProblems);

  const feedLengthUncertainty = settings.feedLengthUncertainty ?? usualFeedLengthUncertainty;
  const tolerance = settings.acceptedDeficit;
  const first = steps[0]?.flow ?? Number.NaN;
  const posterior = ladderPosterior(
    { steps, feedLengthUncertainty, orderByFlow: orderByFlow(counted) },
    tolerance,
  );
  const jam = likeliestJam(posterior.families);
  const possible: PossibleLimits = {
    limitAt: limitDistribution(posterior, first),
    gap: jam !== null && jam.probability > seriousJam ? jam.gap : null,
  };
  const result = meltFlow(steps, possible, tolerance);
  const start = startDeficit(steps, settings);
  const drift = medianDrift(possibleCurves(posterior, first, enoughForMedian));
  return success({
    method: 'flowLadder',
    results: [result, start],
    get curve() {
      return ladderCurve(counted, possibleCurves(posterior, first), tolerance, result);
    },
    warnings: ladderWarnings({ readings, counted, steps, settings, result, drift, jam, start }),
  });
}

/** The limit in mm3/s that is not reached with a probability. */
type Quantile = (probability: number) => number;

interface PossibleLimits {
  readonly limitAt: Quantile;
  /** The steps between which a jam may be, mm3/s. */
  readonly gap: Range | null;
}

/**
 * A jam that is more probable than this may be anywhere between its two steps, so that the interval holds both. Chosen
 * over simulated ladders: some 95 of 100 jams, and one clean ladder of fifty at most.
 */
const seriousJam = 0.12;

function meltFlow(
  steps: readonly LadderStep[],
  { limitAt, gap }: PossibleLimits,
  tolerance: number,
): ReducedResult {
  const median = limitAt(0.5);
  const censored = censoring(steps, median, tolerance);
  const common = { quantity: 'meltFlow', dimension: 'volumeFlow', censored } as const;
  const open = { low: null, high: null, coverage: 0.95 } as const;
  if (censored === 'below') return { ...common, value: steps[0]?.flow ?? Number.NaN, interval: open };
  if (censored === 'above') return { ...common, value: highestThatHeld(steps, limitAt), interval: open };
  return {
    ...common,
    value: rounded(median),
    interval: {
      low: rounded(Math.min(limitAt(0.025), gap?.low ?? Number.POSITIVE_INFINITY)),
      high: rounded(Math.max(limitAt(0.975), gap?.high ?? 0)),
      coverage: 0.95,
    },
  };
}

/**
 * What diameter and density can explain of a low ratio: ±0.05 mm on 1.75 mm is 5.7 % of the area, and 2 % on the
 * density (common practice, no source).
 */
const filamentAllowance = 0.08;

function censoring(steps: readonly LadderStep[], limit: number, tolerance: number): Censoring | null {
  const [first, second] = steps;
  if (limit > (steps.at(-1)?.flow ?? Number.NaN) || allHeld(steps, tolerance)) return 'above';
  // Without a plateau only the nominal ratio can tell that the first step already starves.
  const startsLow = Math.exp(first?.meanLogRatio ?? 0) < (1 - tolerance) * (1 - filamentAllowance);
  return startsLow && limit < (second?.flow ?? Number.NaN) ? 'below' : null;
}

/** Whether no step is missing as much as half of what is accepted against one before it. */
function allHeld(steps: readonly LadderStep[], tolerance: number): boolean {
  const losses = nonDecreasingFit(
    steps.map(({ meanLogRatio }) => -meanLogRatio),
    steps.map(({ count }) => count),
  );
  return (losses.at(-1) ?? 0) - (losses[0] ?? 0) < -0.5 * Math.log1p(-tolerance);
}

/** The highest step whose flow is below the limit with a probability of 95 %. */
function highestThatHeld(steps: readonly LadderStep[], limitAt: Quantile): number {
  const bound = limitAt(0.05);
  return steps.findLast((step) => step.flow <= bound)?.flow ?? steps[0]?.flow ?? Number.NaN;
}

/** A warning needs no more of the drift than about how large it is. */
const enoughForMedian = 40;

function medianDrift(curves: readonly PossibleCurve[]): number {
  return quantile(sortedDraws(curves.map((curve) => curve.drift)), 0.5);
}
