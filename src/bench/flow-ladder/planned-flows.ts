import { filamentFeed } from '../../physics/filament-geometry.ts';
import type {
  CubicMillimetresPerSecond,
  Millimetres,
  MillimetresPerSecond,
  Range,
  Seconds,
} from '../../units/canonical.ts';
import { evenSteps, roundStepSize } from '../layout/even-steps.ts';

/** A ladder of flows in even steps of 1, 2 or 5 times a power of ten. */
export interface PlannedFlows {
  readonly size: CubicMillimetresPerSecond;
  readonly flows: readonly CubicMillimetresPerSecond[];
}

/** Full delivery is to be seen from so far below the expected range, and the onset to be passed by so much. */
const reach = { start: 0.6, end: 1.2 };
/** A step is at most this part of the limit, so that the gap between two of them costs little (common practice, no source). */
const coarsest = 0.1;
/** More steps than this tire whoever weighs them; a wide range then takes coarser ones first. */
const mostSteps = 20;
/** Three flows that deliver in full, three around and beyond the limit (common practice, no source). */
const fewestSteps = 8;

/**
 * The flows, in mm³/s, of a ladder over the range that a limit is expected in, from well below it to beyond it and never
 * above `highest`.
 */
export function plannedFlows(
  value: CubicMillimetresPerSecond,
  range: Range,
  highest: CubicMillimetresPerSecond,
): PlannedFlows {
  const bottom = range.low * reach.start;
  const top = Math.min(range.high * reach.end, highest);
  const wanted = Math.max((top - bottom) / (mostSteps - 1), 0);
  let size = roundStepSize(Math.min(value * coarsest, (top - bottom) / (fewestSteps - 1)), 'down');
  if (size < wanted) size = roundStepSize(wanted, 'up');
  // The last step passes the range, unless the drive or the heater forbids it.
  const last = top < highest ? Math.ceil(top / size - 1e-9) : Math.floor(top / size + 1e-9);
  const first = Math.max(1, Math.min(Math.floor(bottom / size), last - fewestSteps + 1));
  return { size, flows: evenSteps(size, first, last) };
}

/** Feed and duration of a piece at each step. */
export interface LadderFeed {
  readonly flow: CubicMillimetresPerSecond;
  readonly feed: MillimetresPerSecond;
  readonly duration: Seconds;
}

/** Feed and duration at each step, for a filament of the diameter and pieces of the length. */
export function ladderFeeds(
  { flows }: PlannedFlows,
  diameter: Millimetres,
  feedLength: Millimetres,
): LadderFeed[] {
  return flows.map((flow) => {
    const feed = filamentFeed(flow, diameter);
    return { flow, feed, duration: feedLength / feed };
  });
}
