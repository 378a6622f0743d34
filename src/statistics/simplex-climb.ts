/** A place and how high it is. */
export interface Summit {
  readonly point: readonly number[];
  readonly height: number;
}

/** When a climb ends. */
interface ClimbEnd {
  /** After about so many. */
  readonly evaluations: number;
  /** When the corners of the simplex differ by less in height. */
  readonly level: number;
}

/**
 * The highest place that a climb reaches, beginning at a start with a simplex that has a step along each axis (Nelder
 * and Mead, "A simplex method for function minimization", Computer Journal 7 (1965) 308-313). Heights may be -Infinity.
 */
export function climbSimplex(
  height: (point: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  { evaluations, level }: ClimbEnd,
): Summit {
  let left = evaluations;
  const visit = (point: readonly number[]): Summit => {
    left -= 1;
    return { point, height: height(point) };
  };
  const beside = steps.map((step, axis) =>
    visit(start.map((part, other) => (other === axis ? part + step : part))),
  );
  let corners = highestFirst([visit(start), ...beside]);
  while (left > 0 && !isLevel(corners, level)) corners = highestFirst(moved(corners, visit));
  const [best = nowhere] = corners;
  return best;
}

/** In place of a corner that is missing; a simplex has at least its start. */
const nowhere: Summit = { point: [], height: Number.NEGATIVE_INFINITY };

function isLevel(corners: readonly Summit[], level: number): boolean {
  const [best = nowhere, worst = nowhere] = [corners[0], corners.at(-1)];
  return best.height - worst.height < level;
}

function highestFirst(corners: readonly Summit[]): Summit[] {
  return corners.toSorted((one, other) => other.height - one.height);
}

/** The corners after the lowest one was reflected, stretched or drawn in. */
function moved(corners: readonly Summit[], visit: (point: readonly number[]) => Summit): readonly Summit[] {
  const others = corners.slice(0, -1);
  const [best = nowhere, worst = nowhere, second = nowhere] = [corners[0], corners.at(-1), corners.at(-2)];
  const middle = worst.point.map(
    (_, axis) => others.reduce((sum, { point }) => sum + (point[axis] ?? 0), 0) / others.length,
  );
  const along = (factor: number) =>
    visit(middle.map((part, axis) => part + factor * (part - (worst.point[axis] ?? 0))));
  const reflected = along(1);
  if (reflected.height > best.height) {
    const further = along(2);
    return [...others, further.height > reflected.height ? further : reflected];
  }
  if (reflected.height > second.height) return [...others, reflected];
  const inside = along(reflected.height > worst.height ? 0.5 : -0.5);
  if (inside.height > Math.max(worst.height, reflected.height)) return [...others, inside];
  const towards = (point: readonly number[]) =>
    visit(point.map((part, axis) => (part + (best.point[axis] ?? 0)) / 2));
  return [best, ...corners.slice(1).map(({ point }) => towards(point))];
}
