import type { CubicMillimetresPerSecond } from '../../../units/canonical.ts';
import type { ReducedResult } from '../../reduction.ts';
import type { LadderStep } from '../flow-ladder-steps.ts';
import { roundFlow } from './candidates.ts';
import {
  type FeedNext,
  type FeedReason,
  fewestFlows,
  type JudgedSteps,
  missingShare,
  type StopFeeding,
} from './feeding-advice.ts';

/** From one coarse flow to the next: a quarter of the expected range by the logarithm, within these factors (common practice, no source). */
const growth = { least: 1.15, most: 1.4 };
/** From full delivery at the first flow straight to where the limit may begin to lie, but by no more than that. */
const firstJump = 2;
/** Below a ladder that starts too high. */
const descent = 1.4;
/** Below a flow at which nothing was fed before the machine stopped. */
const wellBelow = 0.6;
/** Flows that are closer together tell no more than repeats do. */
const leastGap = 1.02;

/** A ladder whose limit is not bracketed yet; the result is null where there are too few flows for one. */
interface OpenLadder extends JudgedSteps {
  readonly result: ReducedResult | null;
}

/** The next flow while the limit is not bracketed: up in coarse steps, or into the gap in which it must lie. */
export function coarseFlow(ladder: OpenLadder): FeedNext | StopFeeding {
  const { steps, settings, outlook, result } = ladder;
  const [lowest] = steps;
  if (lowest === undefined) {
    const first = Math.min(outlook.lowest, wellBelow * (settings.haltedAt ?? Number.POSITIVE_INFINITY));
    return feed(ladder, 'fullDelivery', first);
  }
  if (result?.censored === 'below') return feed(ladder, 'lower', lowest.flow / descent);
  const past = steps.findIndex((step) => missingShare(step, steps) > clearlyMissing(ladder));
  if (past > 0) return intoGap(ladder, past);
  if (settings.haltedAt !== undefined) return belowHalt(ladder, settings.haltedAt);
  const last = steps.at(-1)?.flow ?? lowest.flow;
  return last < ladder.ceiling ? feed(ladder, 'climb', upFrom(last, ladder)) : atTop(ladder);
}

/** More than a piece may be short of by its scatter alone. */
function clearlyMissing({ settings: { acceptedDeficit } }: OpenLadder): number {
  return acceptedDeficit + Math.min(0.1, Math.max(0.03, acceptedDeficit));
}

function upFrom(last: CubicMillimetresPerSecond, { outlook: { expected } }: OpenLadder): number {
  const factor = Math.min(
    growth.most,
    Math.max(growth.least, (expected.high / Math.max(expected.low, 1e-9)) ** 0.25),
  );
  return Math.max(factor * last, Math.min(expected.low, firstJump * last));
}

function intoGap(ladder: OpenLadder, past: number): FeedNext | StopFeeding {
  const { steps } = ladder;
  const [low, high] = [steps[past - 1]?.flow ?? Number.NaN, steps[past]?.flow ?? Number.NaN];
  if (high > leastGap * low) return feed(ladder, 'between', Math.sqrt(low * high));
  return steps.length < fewestFlows
    ? feed(ladder, 'between', widestGap(steps))
    : { step: 'stop', reason: 'cannotNarrow' };
}

function belowHalt(ladder: OpenLadder, haltedAt: CubicMillimetresPerSecond): FeedNext | StopFeeding {
  const { steps, outlook } = ladder;
  const last = steps.at(-1)?.flow ?? Number.NaN;
  if (haltedAt - last > outlook.askedWidth * haltedAt)
    return feed(ladder, 'belowHalt', (last + haltedAt) / 2);
  return steps.length < fewestFlows
    ? feed(ladder, 'between', widestGap(steps))
    : { step: 'stop', reason: 'nearHalt' };
}

function atTop(ladder: OpenLadder): FeedNext | StopFeeding {
  return ladder.steps.length < fewestFlows
    ? feed(ladder, 'between', widestGap(ladder.steps))
    : { step: 'stop', reason: 'heldToTop' };
}

/** The middle of the widest gap between two steps; half of the lowest flow where there is one step only. */
function widestGap(steps: readonly LadderStep[]): CubicMillimetresPerSecond {
  const gaps = steps.slice(1).map(({ flow }, place) => ({ low: steps[place]?.flow ?? flow, high: flow }));
  const [widest] = gaps.toSorted((one, other) => other.high / other.low - one.high / one.low);
  return widest === undefined ? (steps[0]?.flow ?? Number.NaN) / 2 : Math.sqrt(widest.low * widest.high);
}

/** Pieces that usually follow once the limit is bracketed; measured by `npm run piece-coverage`. */
const usuallyAround = 4;

function feed(ladder: OpenLadder, reason: FeedReason, flow: CubicMillimetresPerSecond): FeedNext {
  const { steps, outlook, ceiling } = ladder;
  const size = reason === 'climb' ? 'coarse' : 'fine';
  const rounded = Math.min(ceiling, roundFlow(flow, outlook.expected.value, size));
  return {
    step: 'feed',
    reason,
    flow: rounded,
    expectedWidth: null,
    piecesToGo: climbsFrom(rounded, ladder) + usuallyAround,
    ...besideOf(steps, rounded),
    counts: null,
  };
}

/** Coarse flows until the expected limit is passed, the given one among them. */
function climbsFrom(flow: CubicMillimetresPerSecond, ladder: OpenLadder): number {
  let [climbs, at] = [1, flow];
  while (at < Math.min(ladder.outlook.expected.value, ladder.ceiling)) {
    at = upFrom(at, ladder);
    climbs += 1;
  }
  return climbs;
}

/** The steps on either side of a flow, with what is missing there. */
export function besideOf(
  steps: readonly LadderStep[],
  flow: CubicMillimetresPerSecond,
): Pick<FeedNext, 'below' | 'above'> {
  const told = (step: LadderStep | undefined) =>
    step === undefined ? null : { flow: step.flow, missing: missingShare(step, steps) };
  return {
    below: told(steps.findLast((step) => step.flow < flow)),
    above: told(steps.find((step) => step.flow > flow)),
  };
}
