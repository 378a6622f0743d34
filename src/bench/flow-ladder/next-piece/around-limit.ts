import { quantile } from '../../../statistics/coverage-interval.ts';
import type { CubicMillimetresPerSecond, Fraction } from '../../../units/canonical.ts';
import type { ReducedResult } from '../../reduction.ts';
import type { LadderStep } from '../flow-ladder-steps.ts';
import { type Candidate, candidatesFor, roundFlow } from './candidates.ts';
import { besideOf } from './coarse-flow.ts';
import { type CurveCloud, curveCloud, spreadOf } from './curve-cloud.ts';
import type { FeedNext, FeedReason, JudgedSteps, StopFeeding } from './feeding-advice.ts';
import { bestOf, partsAhead } from './piece-worth.ts';

/** A ladder whose limit is bracketed by an interval with two ends. */
interface BracketedLadder extends JudgedSteps {
  readonly result: ReducedResult;
  /** Of the interval, as a part of the limit. */
  readonly width: Fraction;
}

/** A limit this near to the lowest step has no full delivery to be compared with. */
const nearLowest = 1.15;
/** From there down to a flow that delivers in full, as a factor. */
const descent = 0.7;
/** An interval that is so much wider than the curves' own knows of a gap that no curve shows. */
const widerThanCurves = 1.5;
/** Pieces looked ahead for what the asked width will take. */
const farthestAhead = 20;
/** Where that many more would leave more than this part of the interval, feeding is of no use. */
const useless = { pieces: 10, part: 0.9 };

/** The piece around the limit that is expected to narrow the interval most; or to stop, once it is as narrow as asked. */
export function aroundLimit(ladder: BracketedLadder): FeedNext | StopFeeding {
  const { steps, outlook, result, width } = ladder;
  const lowest = steps[0]?.flow ?? Number.NaN;
  const lower = roundFlow(descent * lowest, result.value);
  const isNear = (result.interval.low ?? result.value) < nearLowest * lowest;
  if (isNear && lower < lowest) return told(ladder, { reason: 'lower', flow: lower });
  return width <= outlook.askedWidth ? narrowEnough(ladder) : narrowing(ladder);
}

function narrowing(ladder: BracketedLadder): FeedNext | StopFeeding {
  const { steps, settings, ceiling, result, width } = ladder;
  const low = result.interval.low ?? result.value;
  const high = result.interval.high ?? result.value;
  const cloud = curveCloud(ladder, settings);
  const middle = Math.min(ceiling, roundFlow((low + high) / 2, result.value));
  if (width > widerThanCurves * widthOf(cloud) && steps.every(({ flow }) => flow !== middle)) {
    return told(ladder, { reason: 'gap', flow: middle, expectedWidth: width / 2 });
  }
  const candidates = candidatesFor(steps, cloud, settings, ceiling);
  const best = bestOf(cloud, candidates);
  if (best === null) return { step: 'stop', reason: 'cannotNarrow' };
  const parts = partsAhead(cloud, candidates, best.candidate, farthestAhead);
  const ahead = parts.map((part) => (best.part * part) / (parts[0] ?? 1));
  if ((ahead[useless.pieces - 1] ?? 0) > useless.part) return { step: 'stop', reason: 'cannotNarrow' };
  const reached = ahead.findIndex((part) => width * part <= ladder.outlook.askedWidth);
  const counts = countedPieces(ladder, cloud);
  const baseline = baselinePiece(best.candidate, counts, cloud, candidates, ladder);
  const chosen = baseline ?? best;
  return told(ladder, {
    reason: baseline === null ? 'onset' : 'baseline',
    flow: chosen.candidate.flow,
    expectedWidth: width * Math.min(1, chosen.part),
    piecesToGo: reached === -1 ? null : reached + 1 + missingRepeats(ladder),
    counts,
  });
}

/**
 * Stops, unless the step nearest to the limit, or every other one, was fed only once: who stops at the first narrow interval
 * stops at one that is narrow by chance more often, and how well pieces repeat is seen by repeats alone.
 */
function narrowEnough(ladder: BracketedLadder): FeedNext | StopFeeding {
  const flow = unrepeated(ladder);
  if (flow === null) return { step: 'stop', reason: 'reached' };
  return told(ladder, {
    reason: 'repeat',
    flow,
    expectedWidth: ladder.width,
    piecesToGo: Math.max(1, missingRepeats(ladder)),
  });
}

/** The flow that must be fed again: nearest to the limit, else the lowest one. */
function unrepeated({ steps, result: { value } }: BracketedLadder): CubicMillimetresPerSecond | null {
  const off = ({ flow }: LadderStep) => Math.abs(Math.log(flow / value));
  const [nearest, ...others] = steps.toSorted((one, other) => off(one) - off(other));
  if (nearest?.count === 1) return nearest.flow;
  return others.some(({ count }) => count > 1) ? null : (steps[0]?.flow ?? null);
}

/** Steps that must be fed again before feeding may stop. */
function missingRepeats({ steps }: BracketedLadder): number {
  return Math.max(0, 2 - steps.filter(({ count }) => count > 1).length);
}

interface Told {
  readonly reason: FeedReason;
  readonly flow: CubicMillimetresPerSecond;
  readonly expectedWidth?: Fraction;
  readonly piecesToGo?: number | null;
  readonly counts?: PieceCounts;
}

function told({ steps }: BracketedLadder, piece: Told): FeedNext {
  const { expectedWidth = null, piecesToGo = null, counts = null, ...rest } = piece;
  return { step: 'feed', ...rest, expectedWidth, piecesToGo, counts, ...besideOf(steps, piece.flow) };
}

/** Width of the limits of the curves that holds 95 % of them, as a part of the limit. */
function widthOf({ limits }: CurveCloud): Fraction {
  const sorted = Float64Array.from(limits).sort();
  return quantile(sorted, 0.975) - quantile(sorted, 0.025);
}

/** Where so little of the accepted deficit is missing, a piece shows full delivery. */
const hardlyMissing = 0.2;
/** Up to this share of the limit a piece shows full delivery best: nearer to it a slow onset or a drift shows too. */
const wellBelow = 0.6;
/** A piece so near to the limit, by the logarithm, shows the onset. */
const nearLimit = 0.1;

type PieceCounts = NonNullable<FeedNext['counts']>;

function isFull({ missingAt }: CurveCloud, { settings }: JudgedSteps, flow: number): boolean {
  return missingAt(flow) < hardlyMissing * settings.acceptedDeficit;
}

function countedPieces(ladder: BracketedLadder, cloud: CurveCloud): PieceCounts {
  let [full, near] = [0, 0];
  for (const { flow, count } of ladder.steps) {
    if (isFull(cloud, ladder, flow)) full += count;
    else if (Math.abs(Math.log(flow / ladder.result.value)) < nearLimit) near += count;
  }
  return { full, near };
}

/**
 * Once scatter alone widens the interval, a deficit is known as well as the two masses that it compares: pieces at full
 * delivery are fed as often as those near the limit. One piece ahead this does not show, since each helps by the other.
 */
function baselinePiece(
  best: Candidate,
  { full, near }: PieceCounts,
  cloud: CurveCloud,
  candidates: readonly Candidate[],
  ladder: BracketedLadder,
): ReturnType<typeof bestOf> {
  if (full >= near || spreadOf(best.ratios) >= best.scatter) return null;
  const lowest = ladder.steps[0]?.flow ?? Number.NaN;
  const highest = Math.max(lowest, wellBelow * (ladder.result.interval.low ?? lowest));
  return bestOf(
    cloud,
    candidates.filter(({ flow }) => flow <= highest && isFull(cloud, ladder, flow)),
  );
}
