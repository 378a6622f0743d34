import type { NestedLine, NestedNode } from '../../statistics/nested-integral.ts';

/** How the curves of one limit go on to either side of it, up to half-way to the next ones. */
export interface LimitCell {
  /** Logarithm of the limit in mm3/s. */
  readonly logLimit: number;
  /** Reach to either side of that; left is below 0. */
  readonly left: number;
  readonly right: number;
  /** By how much the logarithm of the density, and the drift, differ so far away from the limit. */
  readonly log: (away: number) => number;
  readonly drift: (away: number) => number;
}

/** A parabola through the logarithms of the density would shoot over where it bends more than this over a cell. */
const steepest = 3;

/** The cell of a limit, by its place along a line of them. */
export function limitCell({ nodes, widths }: NestedLine, place: number): LimitCell {
  const [before, here, after] = [nodes[place - 1], nodes[place], nodes[place + 1]];
  const at = here?.at ?? Number.NaN;
  const width = 2 * (widths[place] ?? 0);
  const left = before === undefined ? width - ((after?.at ?? at) - at) : at - before.at;
  const right = after === undefined ? width - (at - (before?.at ?? at)) : after.at - at;
  const log = between(here?.log ?? 0, before?.log, after?.log, left, right);
  const drift = between(here?.aside ?? 0, asideOf(before), asideOf(after), left, right);
  return {
    logLimit: at,
    left: -left / 2,
    right: right / 2,
    log: Math.abs(log.bend) * (left + right) ** 2 < 4 * steepest ? log.smooth : log.straight,
    drift: drift.smooth,
  };
}

function asideOf(node: NestedNode | undefined): number | undefined {
  return node?.inner === null ? undefined : node?.aside;
}

interface Course {
  readonly bend: number;
  /** Along the parabola through three values, and along the lines between them. */
  readonly smooth: (away: number) => number;
  readonly straight: (away: number) => number;
}

/** How a value changes away from a node, by those at the nodes before and after it, as far as there are any. */
function between(
  here: number,
  before: number | undefined,
  after: number | undefined,
  left: number,
  right: number,
): Course {
  const down = before !== undefined && Number.isFinite(before) ? (here - before) / left : null;
  const up = after !== undefined && Number.isFinite(after) ? (after - here) / right : null;
  const bothKnown = down !== null && up !== null;
  const slope = bothKnown ? (down * right + up * left) / (left + right) : (down ?? up ?? 0);
  const bend = bothKnown ? (2 * (up - down)) / (left + right) : 0;
  return {
    bend: bothKnown ? bend : Number.POSITIVE_INFINITY,
    smooth: (away) => away * (slope + 0.5 * bend * away),
    straight: (away) => away * ((away < 0 ? down : up) ?? 0),
  };
}
