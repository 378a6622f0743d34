import { integrateAlong } from '../../statistics/integral-line.ts';
import type { NestedLine, NestedNode } from '../../statistics/nested-integral.ts';
import type { Range } from '../../units/canonical.ts';
import type { LadderStep } from './flow-ladder-steps.ts';
import type { LadderLikelihood } from './ladder-likelihood.ts';
import { jam, type OnsetFamily } from './onset-families.ts';

/** Jams between two neighbouring steps, which the readings cannot place any closer. */
export interface JamPosterior {
  readonly family: OnsetFamily;
  readonly limits: NestedLine;
  /** The steps, mm3/s. */
  readonly gap: Range;
}

/** The limits in a gap are all alike; so many stand for them. */
const parts = 8;
/** Standard deviation of the log odds of what is missing that usual readings leave. */
const usualSpread = 0.15;
const shareCliff = 4;
/** Gaps are left out whose jams are less probable than the best by e to that power. */
const negligible = 8;

/** A jam in each gap between two steps where the readings leave one possible. */
export function jamPosteriors(
  steps: readonly LadderStep[],
  likelihood: LadderLikelihood,
  tolerance: number,
): JamPosterior[] {
  const center = shownShare(steps, tolerance);
  const gaps = steps.slice(1).map(({ flow }, index) => {
    const gap = { low: steps[index]?.flow ?? Number.NaN, high: flow };
    const nodeAt = jamsWithin(gap, likelihood, tolerance);
    return { gap, nodeAt, log: nodeAt(center).log };
  });
  const best = Math.max(...gaps.map(({ log }) => log));
  return gaps.flatMap(({ gap, nodeAt, log }) => {
    const [axis] = log > best - negligible ? jam.coordinates : [];
    if (axis === undefined) return [];
    const line = integrateAlong(nodeAt, { ...axis, cliff: shareCliff }, { center, spread: usualSpread });
    return line === null ? [] : [{ family: jam, limits: evenLimits(line, gap), gap }];
  });
}

/** Log odds of the share that the highest step is missing against the lowest. */
function shownShare(steps: readonly LadderStep[], tolerance: number): number {
  const [first, last] = [steps[0], steps.at(-1)];
  const missing = 1 - Math.exp((last?.meanLogRatio ?? Number.NaN) - (first?.meanLogRatio ?? Number.NaN));
  const [center = Number.NaN] = jam.shapeAt(
    jam.coordinates.map(({ shown }) => shown?.(missing) ?? 0.5),
    tolerance,
  );
  return center;
}

/** The density of jams in a gap along what is missing. */
function jamsWithin(
  { low, high }: Range,
  likelihood: LadderLikelihood,
  tolerance: number,
): (at: number) => NestedNode {
  const onsets = jam.onsets([], tolerance);
  const logLimit = Math.log(low * high) / 2;
  return (at) => {
    const onset = onsets(at);
    if (onset === null) return { at, log: Number.NEGATIVE_INFINITY, aside: 0, inner: null };
    const fit = likelihood.fit(onset, logLimit);
    const log = jam.logWeight + onset.logPrior + fit.logLikelihood;
    return { at, log, aside: fit.drift, inner: null };
  };
}

/** Limits spread evenly over a gap, with the same line inside of each. */
function evenLimits(inner: NestedLine, gap: Range): NestedLine {
  const low = Math.log(gap.low);
  const whole = Math.log(gap.high) - low;
  const width = whole / parts;
  const { logIntegral: log, aside } = inner;
  const nodes = Array.from({ length: parts }, (_, part) => ({
    at: low + (part + 0.5) * width,
    log,
    aside,
    inner,
  }));
  return {
    nodes,
    widths: nodes.map(() => width),
    logIntegral: log + Math.log(whole),
    mean: low + whole / 2,
    spread: whole / Math.sqrt(12),
    aside,
  };
}

/** A jam that the readings leave possible, and how probable it is. */
export interface PossibleJam {
  /** The steps between which it is, mm3/s. */
  readonly gap: Range;
  readonly probability: number;
}

/** The most probable one among all that the readings leave possible; null where there is none. */
export function likeliestJam(
  families: readonly { readonly limits: NestedLine; readonly gap?: Range }[],
): PossibleJam | null {
  const best = Math.max(...families.map(({ limits }) => limits.logIntegral));
  const weights = families.map(({ limits, gap }) => ({ gap, weight: Math.exp(limits.logIntegral - best) }));
  const total = weights.reduce((sum, { weight }) => sum + weight, 0);
  const jams = weights.flatMap(({ gap, weight }) =>
    gap === undefined ? [] : [{ gap, probability: weight / total }],
  );
  return jams.toSorted((one, other) => other.probability - one.probability)[0] ?? null;
}
