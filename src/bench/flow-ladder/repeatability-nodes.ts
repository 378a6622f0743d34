import type { LadderStep } from './flow-ladder-steps.ts';

/** One repeatability of those that the likelihood is summed over. */
export interface RepeatabilityNode {
  /** Relative. */
  readonly repeatability: number;
  /** Logarithm of its prior probability and of the likelihood of the scatter within steps. */
  readonly log: number;
  /** Of the steps' mean logarithms of the ratio, without what a curve adds. */
  readonly variances: Float64Array;
  /** Sums over the steps before each step, as if all were delivered there; `sums` of them a step. */
  readonly before: Float64Array;
}

/** The sums of the weights w, of w·x, w·x², w·z, w·x·z and w·z², and of the logarithms of the variances. */
export const sums = 7;

/** Repeatability of a weighed extrusion: half a hundredth within a factor of two or so (common practice, no source). */
const usualRepeatability = Math.log(0.005);
const repeatabilitySpread = 0.7;
/** How many standard deviations of that are looked at on either side. */
const reach = 3.6;
/**
 * Distance of nodes in standard deviations of what the readings say of the repeatability: there the sum over nodes of
 * a normal density is right to a thousandth.
 */
const spacing = 1.6;

/** Nodes for the trapezoidal rule over the logarithm of the relative repeatability. */
export function repeatabilityNodes(
  steps: readonly LadderStep[],
  feedLengthUncertainty: number,
): RepeatabilityNode[] {
  const readings = steps.reduce((sum, step) => sum + step.count, 0);
  // That of the logarithm of a standard deviation from so many readings, of which a curve takes three away or so.
  const deviation = 1 / Math.sqrt(2 * Math.max(2, readings - 3));
  const distance = Math.min(1, (spacing * deviation) / repeatabilitySpread);
  const half = Math.ceil(reach / distance);
  return Array.from({ length: 2 * half + 1 }, (_, index) => {
    const deviate = (index - half) * distance;
    const logPrior = Math.log(distance) - 0.5 * (deviate * deviate + Math.log(2 * Math.PI));
    const repeatability = Math.exp(usualRepeatability + repeatabilitySpread * deviate);
    const square = repeatability * repeatability;
    const variances = new Float64Array(
      steps.map((step) => meanVariance(step, square) + feedLengthUncertainty ** 2),
    );
    const scatter = steps.reduce((sum, step) => sum + withinStep(step, square), 0);
    return { repeatability, log: logPrior - scatter, variances, before: sumsBefore(steps, variances) };
  });
}

function sumsBefore(steps: readonly LadderStep[], variances: Float64Array): Float64Array {
  const before = new Float64Array(sums * (steps.length + 1));
  const first = steps[0]?.flow ?? Number.NaN;
  let place = 0;
  const add = (term: number) => {
    before[place + sums] = (before[place] ?? 0) + term;
    place += 1;
  };
  steps.forEach(({ flow, meanLogRatio: z }, index) => {
    const variance = variances[index] ?? Number.NaN;
    const w = 1 / variance;
    const x = first - flow;
    add(w);
    add(w * x);
    add(w * x * x);
    add(w * z);
    add(w * x * z);
    add(w * z * z);
    add(Math.log(variance));
  });
  return before;
}

/**
 * Variance of a step's mean from the square of the repeatability and the scale's resolution. Readings that scatter less than the
 * display's step round alike, so that repeats do not average the rounding away: the part of its variance that they
 * share falls off as exp(-(2πσ/q)²) (Widrow and Kollár, Quantization Noise, 2008, chapter 4).
 */
function meanVariance({ count, relativeResolution }: LadderStep, square: number): number {
  const step = relativeResolution * relativeResolution;
  const rounding = step / 12;
  const shared = rounding * Math.exp((-4 * Math.PI ** 2 * square) / step);
  return shared + (square + rounding - shared) / count;
}

/** Minus the log-likelihood of the scatter within a step, given the square of the repeatability. */
function withinStep({ count, squares, relativeResolution }: LadderStep, square: number): number {
  const variance = square + relativeResolution ** 2 / 12;
  return 0.5 * ((count - 1) * Math.log(variance) + squares / variance);
}
