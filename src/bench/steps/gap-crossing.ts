/** Random numbers from 0 to 1 that say what the curve does between two steps. */
interface GapDraw {
  readonly bend: number;
  readonly place: number;
  /** How much of a rise that is steeper than those beside it is no jump but straight. */
  readonly straight: number;
}

/**
 * Where a course (x ascending, never falling) reaches a level: -Infinity where it is reached before the first step,
 * Infinity where it is not reached by the last. What the curve does between two steps is not known, but its slopes on
 * either side of the gap say something of it: from a flatter side to a steeper one it bends somewhere in between, the more
 * the flatter the one is; where the gap is steeper than both, some of its rise is a jump that may be anywhere.
 */
export function gapCrossing(
  x: readonly number[],
  values: Float64Array,
  level: number,
  draw: GapDraw,
): number {
  const after = values.findIndex((value) => value >= level);
  if (after === -1) return Number.POSITIVE_INFINITY;
  if (after === 0) return Number.NEGATIVE_INFINITY;
  const [low = Number.NaN, high = Number.NaN] = [values[after - 1], values[after]];
  const [start = Number.NaN, end = Number.NaN] = [x[after - 1], x[after]];
  const slope = slopeOf(x, values, after);
  const before = slopeOf(x, values, after - 1) / slope;
  const behind = slopeOf(x, values, after + 1) / slope;
  const share = (level - low) / (high - low);
  const way =
    before <= 1 && behind <= 1
      ? jumpingWay(share, Math.max(before, behind), draw)
      : bentWay(share, before, behind, draw);
  return start + (end - start) * Math.min(1, Math.max(0, way));
}

/** Slope of the gap that ends at a step; level beyond the ends, where nothing is known. */
function slopeOf(x: readonly number[], values: Float64Array, after: number): number {
  const [low, high, start, end] = [values[after - 1], values[after], x[after - 1], x[after]];
  if (low === undefined || high === undefined || start === undefined || end === undefined) return 0;
  return (high - low) / (end - start);
}

/** Way to a share of the rise of a straight line that holds part of it, at least `steadily`, and a jump that holds the rest. */
function jumpingWay(share: number, steadily: number, { straight, place }: GapDraw): number {
  const line = steadily + (1 - steadily) * straight;
  const [below, above] = [line * place, line * place + 1 - line];
  if (share <= below) return share / line;
  return share >= above ? (share - 1 + line) / line : place;
}

/**
 * Way to a share of the rise of a curve that is level up to a bend and straight from there, or straight first and then
 * level. The flatter the neighbour on the level side is, the further into the gap the bend may lie; in a gap that is flatter
 * than both neighbours the straight part is no steeper than the one beside it.
 */
function bentWay(share: number, before: number, behind: number, { bend, place }: GapDraw): number {
  const isShelf = before > 1 && behind > 1;
  const isLevelFirst = isShelf ? place < 0.5 : before <= 1;
  const [level, steep] = isLevelFirst ? [before, behind] : [behind, before];
  const bent = bend * (isShelf ? 1 - 1 / steep : 1 - level);
  return isLevelFirst ? bent + share * (1 - bent) : share * (1 - bent);
}
