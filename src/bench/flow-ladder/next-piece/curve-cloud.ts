import { findRoot } from '../../../statistics/find-root.ts';
import type { CubicMillimetresPerSecond, Fraction } from '../../../units/canonical.ts';
import { type FlowLadderSettings, usualFeedLengthUncertainty } from '../flow-ladder-settings.ts';
import { ladderPosterior } from '../ladder-posterior.ts';
import { type PossibleCurve, possibleCurves } from '../possible-curves.ts';
import { orderByFlow } from '../run-drift.ts';
import type { JudgedSteps } from './feeding-advice.ts';

/** The curves that the readings leave possible, each with its limit and what it lets expect of a piece. */
export interface CurveCloud {
  /** Logarithms of the limits. */
  readonly limits: Float64Array;
  /** Logarithms of the delivered ratio at a flow in mm3/s, one per curve. */
  readonly ratiosAt: (flow: CubicMillimetresPerSecond) => Float64Array;
  /** What the curves are missing at a flow in mm3/s, on average. */
  readonly missingAt: (flow: CubicMillimetresPerSecond) => Fraction;
}

/** Enough to compare flows by; with six times as many the expected intervals differ by a fiftieth. */
const enoughToCompare = 300;
/** Where limits are looked for, as shares of the lowest and the highest step. */
const reach = { low: 0.5, high: 2 };
const accuracy = 1e-4;
const leastDelivered = 1e-3;

/** The curves that the steps of a ladder leave possible. There are at least two steps. */
export function curveCloud(
  { pieces, steps }: Pick<JudgedSteps, 'pieces' | 'steps'>,
  settings: FlowLadderSettings,
): CurveCloud {
  const feedLengthUncertainty = settings.feedLengthUncertainty ?? usualFeedLengthUncertainty;
  const tolerance = settings.acceptedDeficit;
  const first = steps[0]?.flow ?? Number.NaN;
  const posterior = ladderPosterior(
    { steps, feedLengthUncertainty, orderByFlow: orderByFlow(pieces) },
    tolerance,
  );
  const curves = possibleCurves(posterior, first, enoughToCompare);
  const range = {
    low: Math.log(reach.low * first),
    high: Math.log(reach.high * (steps.at(-1)?.flow ?? first)),
  };
  return {
    limits: Float64Array.from(curves, (curve) => limitOf(curve, tolerance, range)),
    ratiosAt: (flow) => {
      const logFlow = Math.log(flow);
      return Float64Array.from(curves, ({ deficit, baseline }) =>
        Math.log(baseline * Math.max(leastDelivered, 1 - deficit(flow, logFlow))),
      );
    },
    missingAt: (flow) => meanOf(Float64Array.from(curves, ({ deficit }) => deficit(flow, Math.log(flow)))),
  };
}

function limitOf(
  { deficit }: PossibleCurve,
  tolerance: Fraction,
  range: { readonly low: number; readonly high: number },
): number {
  const guess = { at: (range.low + range.high) / 2, slope: 1 };
  return findRoot((log) => deficit(Math.exp(log), log) - tolerance, range, guess, accuracy);
}

export function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Standard deviation of values about their mean. */
export function spreadOf(values: Float64Array): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}
