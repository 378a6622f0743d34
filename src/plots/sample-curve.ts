import type { PlotPoint } from './plot.ts';

/** Parts of the range that are looked at even where the curve seems straight. */
const leastParts = 16;
/** How often a part may be halved. */
const mostHalvings = 12;

/**
 * Points of a curve, so close that straight lines between them stay within `tolerance` of it: few where it is straight,
 * many where it bends. The ends of the range are points.
 */
export function sampleCurve(
  curve: (x: number) => number,
  [low, high]: readonly [low: number, high: number],
  tolerance: number,
): PlotPoint[] {
  const at = (x: number): PlotPoint => ({ x, y: curve(x) });
  const ends = Array.from({ length: leastParts + 1 }, (_, part) =>
    at(part === leastParts ? high : low + ((high - low) * part) / leastParts),
  );
  const between = (from: PlotPoint, to: PlotPoint, halvings: number): PlotPoint[] => {
    const middle = at((from.x + to.x) / 2);
    // What is no number does not bend, and needs no points in between.
    const bends = Math.abs(middle.y - (from.y + to.y) / 2) > tolerance;
    if (!bends || halvings === 0) return [to];
    return [...between(from, middle, halvings - 1), ...between(middle, to, halvings - 1)];
  };
  const points = ends.flatMap((to, part) => {
    const from = ends[part - 1];
    return from === undefined ? [to] : between(from, to, mostHalvings);
  });
  return points.filter((point, index) => !isOnLevel(points[index - 1], point, points[index + 1]));
}

/** Whether a point says no more than its neighbours, all being level. */
function isOnLevel(before: PlotPoint | undefined, { y }: PlotPoint, after: PlotPoint | undefined): boolean {
  return before?.y === y && after?.y === y;
}
