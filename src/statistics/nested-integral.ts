import { integrateAlong, type LineGuess, type LineIntegral } from './integral-line.ts';
import type { LineAxis, LineNode } from './line-march.ts';

/** A density over several coordinates, the outermost first. */
interface NestedDensity {
  /** Each with a guess for its first line; the lines beside one another guess from each other. */
  readonly axes: readonly (LineAxis & LineGuess)[];
  /** Nodes along the innermost coordinate, the others being given. */
  readonly along: (outer: readonly number[]) => (at: number) => NestedNode;
}

/** A node with the line inside of it, which is null on the innermost lines. */
export interface NestedNode extends LineNode {
  readonly inner: NestedLine | null;
}

export type NestedLine = LineIntegral<NestedNode>;

/** Lines are summed coarsely where they are less than the best one of their level by e to that power. */
const coarseBelow = 7;

/**
 * The integral of a density over all of its coordinates, as lines within lines: each node of a line holds the integral
 * over the coordinates inside of it. Null where the density is 0 wherever it was looked at. `known` is the highest
 * logarithm on the outermost line of what the integral is to be added to: far below it, less is needed.
 */
export function integrateNested(density: NestedDensity, known = Number.NEGATIVE_INFINITY): NestedLine | null {
  const best = density.axes.map((_, level) => (level === 0 ? known : Number.NEGATIVE_INFINITY));
  return integrateLine({ density, best }, [], null, null);
}

interface Integration {
  readonly density: NestedDensity;
  /** The highest logarithm of each level so far. */
  readonly best: number[];
}

function integrateLine(
  integration: Integration,
  outer: readonly number[],
  like: NestedLine | null,
  guess: LineGuess | null,
): NestedLine | null {
  const { density, best } = integration;
  const level = outer.length;
  const axis = density.axes[level];
  if (axis === undefined) return null;
  const isInnermost = level === density.axes.length - 1;
  const nodeAt = isInnermost ? density.along(outer) : linesInside(integration, outer, like);
  const line = integrateAlong(nodeAt, axis, guess ?? axis, (best[level] ?? 0) - coarseBelow);
  for (const { log } of line?.nodes ?? []) if (log > (best[level] ?? 0)) best[level] = log;
  return line;
}

interface KnownLine {
  readonly at: number;
  readonly inner: NestedLine;
}

function linesInside(
  integration: Integration,
  outer: readonly number[],
  like: NestedLine | null,
): (at: number) => NestedNode {
  const known: KnownLine[] = [];
  return (at) => {
    const [one, two] = nearest(known, at);
    const beside = one?.inner ?? innerNearest(like, at);
    const inner = integrateLine(integration, [...outer, at], beside, guessFrom(at, beside, one, two));
    if (inner !== null) known.push({ at, inner });
    const log = inner?.logIntegral ?? Number.NEGATIVE_INFINITY;
    return { at, log, aside: inner?.aside ?? 0, inner };
  };
}

/** Where the bulk of a line should be: as on the line beside it, on the way that two of them take. */
function guessFrom(
  at: number,
  beside: NestedLine | null,
  one: KnownLine | null,
  two: KnownLine | null,
): LineGuess | null {
  if (beside === null) return null;
  const { mean: center, spread } = beside;
  if (one === null || two === null || Math.abs(at - one.at) > 2 * Math.abs(one.at - two.at)) {
    return { center, spread };
  }
  const slope = (one.inner.mean - two.inner.mean) / (one.at - two.at);
  return { center: center + (at - one.at) * slope, spread };
}

/** A node half-way between two others counts as near to the one that was known first, whatever rounding says. */
const clearlyNearer = 1 - 1e-6;

function nearest(known: readonly KnownLine[], at: number): readonly [KnownLine | null, KnownLine | null] {
  let one: KnownLine | null = null;
  let two: KnownLine | null = null;
  const isNearer = (each: KnownLine, other: KnownLine | null) =>
    other === null || Math.abs(each.at - at) < clearlyNearer * Math.abs(other.at - at);
  for (const each of known) {
    if (isNearer(each, one)) [one, two] = [each, one];
    else if (isNearer(each, two)) two = each;
  }
  return [one, two];
}

function innerNearest(like: NestedLine | null, at: number): NestedLine | null {
  let best: NestedLine | null = null;
  let distance = Number.POSITIVE_INFINITY;
  for (const node of like?.nodes ?? []) {
    const away = Math.abs(node.at - at);
    if (node.inner !== null && away < clearlyNearer * distance) {
      best = node.inner;
      distance = away;
    }
  }
  return best;
}
