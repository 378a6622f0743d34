const MAXIMUM_STEPS = 100;

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The root of a continuous function between two points where it has opposite signs, to the last few digits.
 * Where rounding hides the change of sign at an end of the bracket, the end with the smaller value is the root.
 * Source: C. Ridders, A new algorithm for computing a single root of a real continuous function,
 * IEEE Trans. Circuits and Systems 26 (1979) 979-980.
 */
export function bracketedRoot(f: (x: number) => number, from: number, to: number): number {
  const at = (x: number): Point => ({ x, y: f(x) });
  let low = at(from);
  let high = at(to);
  let root = Math.abs(low.y) < Math.abs(high.y) ? low.x : high.x;
  for (let step = 0; step < MAXIMUM_STEPS && low.y * high.y < 0; step += 1) {
    const middle = at((low.x + high.x) / 2);
    const next = at(riddersPoint(low, middle, high));
    const settled = Math.abs(next.x - root) <= 2 * Number.EPSILON * Math.abs(next.x);
    root = next.x;
    if (settled || next.y === 0) {
      break;
    }
    [low, high] = narrowed(low, middle, high, next);
  }
  return root;
}

function riddersPoint(low: Point, middle: Point, high: Point): number {
  const scale = Math.sqrt(middle.y ** 2 - low.y * high.y);
  return middle.x + ((middle.x - low.x) * Math.sign(low.y - high.y) * middle.y) / scale;
}

function narrowed(low: Point, middle: Point, high: Point, next: Point): [Point, Point] {
  if (middle.y * next.y < 0) {
    return middle.x < next.x ? [middle, next] : [next, middle];
  }
  return low.y * next.y < 0 ? [low, next] : [next, high];
}
