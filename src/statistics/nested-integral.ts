import { integrateAlong, type LineGuess, type LineIntegral } from './integral-line.ts';
import type { LineAxis, LineNode } from './line-march.ts';

/** A density at one point, what is to be averaged besides, and what the node there is to hold. */
export interface WeighedPoint<Held> extends Pick<LineNode, 'log' | 'aside'> {
  readonly held: Held;
}

/** A density over several coordinates, the outermost first. */
interface NestedDensity<Held> {
  /** Each with a guess for its first line; the lines beside one another guess from each other. */
  readonly axes: readonly (LineAxis & LineGuess)[];
  /** The density along the innermost coordinate, the others being given. */
  readonly along: (outer: readonly number[]) => (at: number) => WeighedPoint<Held>;
}

/** A node with the line inside of it; on the innermost lines with what its point is to hold. */
export interface NestedNode<Held = unknown> extends LineNode {
  readonly inner: NestedLine<Held> | null;
  readonly held: Held | null;
}

export type NestedLine<Held = unknown> = LineIntegral<NestedNode<Held>>;

/** Lines are summed coarsely where they are less than the best one of their level by e to that power. */
const coarseBelow = 7;

/**
 * The integral of a density over all of its coordinates, as lines within lines: each node of a line holds the integral
 * over the coordinates inside of it. Null where the density is 0 wherever it was looked at.
 */
export function integrateNested<Held>(density: NestedDensity<Held>): NestedLine<Held> | null {
  const best = density.axes.map(() => Number.NEGATIVE_INFINITY);
  return integrateLine({ density, best }, [], null, null);
}

interface Integration<Held> {
  readonly density: NestedDensity<Held>;
  /** The highest logarithm of each level so far. */
  readonly best: number[];
}

function integrateLine<Held>(
  integration: Integration<Held>,
  outer: readonly number[],
  like: NestedLine<Held> | null,
  guess: LineGuess | null,
): NestedLine<Held> | null {
  const { density, best } = integration;
  const level = outer.length;
  const axis = density.axes[level];
  if (axis === undefined) return null;
  const isInnermost = level === density.axes.length - 1;
  const nodeAt = isInnermost ? points(density, outer) : linesInside(integration, outer, like);
  const line = integrateAlong(nodeAt, axis, guess ?? axis, (best[level] ?? 0) - coarseBelow);
  for (const { log } of line?.nodes ?? []) if (log > (best[level] ?? 0)) best[level] = log;
  return line;
}

function points<Held>(
  { along }: NestedDensity<Held>,
  outer: readonly number[],
): (at: number) => NestedNode<Held> {
  const weigh = along(outer);
  return (at) => {
    const { log, aside, held } = weigh(at);
    return { at, log, aside, inner: null, held };
  };
}

interface KnownLine<Held = unknown> {
  readonly at: number;
  readonly inner: NestedLine<Held>;
}

function linesInside<Held>(
  integration: Integration<Held>,
  outer: readonly number[],
  like: NestedLine<Held> | null,
): (at: number) => NestedNode<Held> {
  const known: KnownLine<Held>[] = [];
  return (at) => {
    const [one, two] = nearest(known, at);
    const beside = one?.inner ?? innerNearest(like, at);
    const inner = integrateLine(integration, [...outer, at], beside, guessFrom(at, beside, one, two));
    if (inner !== null) known.push({ at, inner });
    return {
      at,
      log: inner?.logIntegral ?? Number.NEGATIVE_INFINITY,
      aside: inner?.aside ?? 0,
      inner,
      held: null,
    };
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

function nearest<Held>(
  known: readonly KnownLine<Held>[],
  at: number,
): readonly [KnownLine<Held> | null, KnownLine<Held> | null] {
  let one: KnownLine<Held> | null = null;
  let two: KnownLine<Held> | null = null;
  const isNearer = (each: KnownLine, other: KnownLine | null) =>
    other === null || Math.abs(each.at - at) < clearlyNearer * Math.abs(other.at - at);
  for (const each of known) {
    if (isNearer(each, one)) [one, two] = [each, one];
    else if (isNearer(each, two)) two = each;
  }
  return [one, two];
}

function innerNearest<Held>(like: NestedLine<Held> | null, at: number): NestedLine<Held> | null {
  let best: NestedLine<Held> | null = null;
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
