import { quantile } from '../../../statistics/coverage-interval.ts';
import type { CubicMillimetresPerSecond, Fraction } from '../../../units/canonical.ts';
import { clean } from '../../../units/round-to-step.ts';
import { roundStepSize } from '../../layout/even-steps.ts';
import { type FlowLadderSettings, usualFeedLengthUncertainty } from '../flow-ladder-settings.ts';
import type { LadderStep } from '../flow-ladder-steps.ts';
import { type CurveCloud, meanOf } from './curve-cloud.ts';

/** A flow that may be fed next, with what the curves let expect there. */
export interface Candidate {
  readonly flow: CubicMillimetresPerSecond;
  /** Logarithms of the ratio, one per curve. */
  readonly ratios: Float64Array;
  /** Standard deviation with which one more piece shows the logarithm of its ratio. */
  readonly scatter: number;
}

/** Flows are set in round steps of at most this part of the limit, finely around it and coarsely on the way. */
const fineness = { fine: 0.01, coarse: 0.05 };
/** Flows that are compared: over full delivery, and around where the limit may lie. */
const places = { below: 8, around: 40 };
/** How far beyond the outermost limits a piece may tell something. */
const margin = { low: 0.9, high: 1.15 };

/** A flow in mm3/s in round steps, given about where the limit is. */
export function roundFlow(
  flow: CubicMillimetresPerSecond,
  limit: CubicMillimetresPerSecond,
  steps: keyof typeof fineness = 'fine',
): CubicMillimetresPerSecond {
  const step = roundStepSize(fineness[steps] * limit, 'down');
  return clean(Math.max(1, Math.round(flow / step)) * step);
}

/** The flows to choose from: none below the lowest step and none above `highest`, in mm3/s. */
export function candidatesFor(
  steps: readonly LadderStep[],
  cloud: CurveCloud,
  settings: FlowLadderSettings,
  highest: CubicMillimetresPerSecond,
): Candidate[] {
  const limits = Float64Array.from(cloud.limits).sort();
  const middle = Math.exp(quantile(limits, 0.5));
  const lowest = steps[0]?.flow ?? Number.NaN;
  const low = Math.max(lowest, margin.low * Math.exp(limits[0] ?? Number.NaN));
  const high = Math.max(low, margin.high * Math.exp(limits.at(-1) ?? Number.NaN));
  const flows = [...between(lowest, low, places.below), ...between(low, high, places.around)]
    .map((flow) => roundFlow(flow, middle))
    .filter((flow) => flow >= lowest && flow <= highest);
  const repeating = Math.hypot(
    repeatability(steps, cloud),
    (steps[0]?.relativeResolution ?? 0) / Math.sqrt(12),
  );
  return [...new Set([lowest, ...flows])].map((flow) => {
    const ratios = cloud.ratiosAt(flow);
    const shared = sharedScatter(ratios, steps[0], settings);
    const before = steps.find((step) => step.flow === flow)?.count ?? 0;
    return { flow, ratios, scatter: oneMore(repeating, shared, before) };
  });
}

function between(low: number, high: number, parts: number): number[] {
  return Array.from({ length: parts + 1 }, (_, part) => low + ((high - low) * part) / parts);
}

/** As many readings as half a hundredth, the usual repeatability, counts for (common practice, no source). */
const usual = { repeatability: 0.005, weight: 3 };
/** What a curve takes away of the readings' freedom to scatter. */
const fitted = 3;

/** How well pieces repeat, as the standard deviation of the logarithm, by how far they lie from the curves. */
function repeatability(steps: readonly LadderStep[], cloud: CurveCloud): number {
  let [sum, count] = [usual.weight * usual.repeatability ** 2, usual.weight];
  for (const step of steps) {
    const off = step.meanLogRatio - meanOf(cloud.ratiosAt(step.flow));
    sum += step.squares + step.count * off * off;
    count += step.count;
  }
  return Math.sqrt(sum / Math.max(usual.weight, count - fitted));
}

/** No curve is the truth: past the onset what is missing is trusted to this part of itself, as the reduction does. */
const modelDoubt = 0.025;

/** What all pieces at one flow are off by together. */
function sharedScatter(
  ratios: Float64Array,
  lowest: LadderStep | undefined,
  { feedLengthUncertainty = usualFeedLengthUncertainty }: FlowLadderSettings,
): number {
  const missing: Fraction = Math.expm1(Math.max(0, (lowest?.meanLogRatio ?? 0) - meanOf(ratios)));
  return Math.hypot(feedLengthUncertainty, modelDoubt * missing);
}

/** The standard deviation of one reading that would tell as much as one more piece at a flow with so many before. */
function oneMore(repeating: number, shared: number, before: number): number {
  const variance = (count: number) => shared * shared + (repeating * repeating) / count;
  const told = 1 / variance(before + 1) - (before === 0 ? 0 : 1 / variance(before));
  return Math.sqrt(1 / told);
}
