import type { LadderStep } from '../../src/bench/flow-ladder/flow-ladder-steps.ts';
import type { OnsetCurve } from './onset-families.ts';

/** How well a curve explains a ladder, and what it leaves open about the plateau before the onset. */
export interface LadderLikelihood {
  readonly logLikelihood: number;
  /** Logarithm of the ratio at the lowest step, were nothing missing there. */
  readonly plateau: number;
  /** Fall of the logarithm of the ratio per flow in units of the limit: mean and standard deviation. */
  readonly drift: number;
  readonly driftSpread: number;
}

/** The bench as the likelihood sees it. */
export interface LadderBench {
  readonly steps: readonly LadderStep[];
  /** Relative standard uncertainty of the fed length. */
  readonly feedLengthUncertainty: number;
  /** How closely the flows rise with the time of the run, 0 to 1. */
  readonly orderByFlow: number;
}

// The delivered share falls a little even before the onset, since the drive slips more against a higher pressure:
// half a hundredth on the way to the limit, give or take one (common practice, no source).
const driftMean = 0.005;
const driftDeviation = 0.008;

/** How far the gain of a scale drifts over a run: its standard deviation (common practice, no source). */
const scaleDeviation = 0.004;

/**
 * No family of curves is the truth, so a predicted deficit is trusted to this part of itself; and extrusion past the
 * onset is unsteady, which repeats show and single readings do not. Chosen by coverage over simulated ladders of
 * foreign families.
 */
const modelDoubt = 0.016;
const doubtOfSingles = 0.03;

/**
 * The likelihood of the step means and of the scatter within steps, given an onset curve with its limit (mm3/s) and
 * the logarithm of the relative repeatability. The ratio at the lowest step and the linear drift are integrated out:
 * given the rest the logarithms of the ratios are linear in both (Gelman et al., Bayesian Data Analysis, 3rd ed., 14.8).
 */
export function ladderLikelihood(
  { steps, feedLengthUncertainty }: LadderBench,
  curve: OnsetCurve,
  limit: number,
  logRepeatability: number,
): LadderLikelihood {
  const repeatability = Math.exp(2 * logRepeatability);
  const first = steps[0]?.flow ?? Number.NaN;
  const driftPrecision = 1 / driftDeviation ** 2;
  let logTerms = 0;
  let w = 0;
  let wx = 0;
  let wxx = driftPrecision;
  let wz = 0;
  let wxz = driftPrecision * driftMean;
  let wzz = driftPrecision * driftMean ** 2;
  for (const step of steps) {
    const missing = curve(step.flow);
    const variance =
      meanVariance(step, repeatability) +
      feedLengthUncertainty ** 2 +
      ((doubtOf(step) * missing) / (1 - missing)) ** 2;
    const weight = 1 / variance;
    const x = (first - step.flow) / limit;
    const z = step.meanLogRatio - Math.log(1 - missing);
    w += weight;
    wx += weight * x;
    wxx += weight * x * x;
    wz += weight * z;
    wxz += weight * x * z;
    wzz += weight * z * z;
    logTerms -= 0.5 * Math.log(variance) + withinStep(step, repeatability);
  }
  const determinant = w * wxx - wx * wx;
  const plateau = (wxx * wz - wx * wxz) / determinant;
  const drift = (w * wxz - wx * wz) / determinant;
  const misfit = wzz - plateau * wz - drift * wxz;
  return {
    logLikelihood: logTerms - 0.5 * (misfit + Math.log(determinant)),
    plateau,
    drift,
    driftSpread: Math.sqrt(w / determinant),
  };
}

const doubtOf = ({ count }: LadderStep) => (count > 1 ? modelDoubt : Math.hypot(modelDoubt, doubtOfSingles));

/** What is left of a drift's mean and standard deviation when a drift of the scale, which takes no flow, may be in it. */
export function driftOfDrive(
  { drift, driftSpread }: LadderLikelihood,
  orderByFlow: number,
): { readonly mean: number; readonly spread: number } {
  const scale = (scaleDeviation * orderByFlow) ** 2;
  const own = driftDeviation ** 2 / (driftDeviation ** 2 + scale);
  return {
    mean: driftMean + own * (drift - driftMean),
    spread: Math.hypot(own * driftSpread, Math.sqrt(own * scale)),
  };
}

/**
 * Variance of a step's mean from repeatability and the scale's resolution. Readings that scatter less than the
 * display's step round alike, so that repeats do not average the rounding away: the part of its variance that they
 * share falls off as exp(-(2πσ/q)²) (Widrow and Kollár, Quantization Noise, 2008, chapter 4).
 */
function meanVariance({ count, relativeResolution }: LadderStep, repeatability: number): number {
  const square = relativeResolution * relativeResolution;
  const rounding = square / 12;
  const shared = rounding * Math.exp((-4 * Math.PI ** 2 * repeatability) / square);
  return shared + (repeatability + rounding - shared) / count;
}

/** Minus the log-likelihood of the scatter within a step. */
function withinStep({ count, squares, relativeResolution }: LadderStep, repeatability: number): number {
  const variance = repeatability + relativeResolution ** 2 / 12;
  return 0.5 * ((count - 1) * Math.log(variance) + squares / variance);
}
