import type { RandomSource } from './random.ts';

/** The logarithm of a density, up to a constant; -Infinity where nothing is possible. */
type LogDensity = (point: Float64Array) => number;

/** A coordinate: where it may lie, and into how many cells that is cut at first. */
export interface Axis {
  readonly low: number;
  readonly high: number;
  readonly cells: number;
}

/** Where a density over a box is high, as cells of one size. */
export interface LikelyCells {
  /** Their middles, one after the other. */
  readonly middles: Float64Array;
  readonly logDensities: Float64Array;
  /** Size of the cells along each axis. */
  readonly size: Float64Array;
  /** The logarithm of the mean density over the whole box; -Infinity where it is 0 throughout. */
  readonly logMean: number;
}

/** Cells that are kept from one round to the next. */
const most = 64;
/** So many cells of equal density would spread alike; then they are small enough. */
const enough = 24;
const mostRounds = 14;
/** A cell that is less likely than the best by this logarithm does not count. */
const negligible = 14;
/** Below the floor only a density whose best still rises by more than this from one round to the next is cut further. */
const climbing = 1;

/**
 * Finds where a density over a box of one to three coordinates is high: the box is cut into cells, and the likelier ones
 * are cut in halves along every axis, again and again, until several share what the best one had. Several summits,
 * ridges and edges do no harm as long as the first cells show where to look. A density that stays below a floor, by its
 * logarithm, is of no use to the caller, and is cut no further once that shows.
 */
export function likelyCells(
  density: LogDensity,
  axes: readonly Axis[],
  floor = Number.NEGATIVE_INFINITY,
): LikelyCells {
  const dimensions = axes.length;
  const size = Float64Array.from(axes, ({ low, high, cells }) => (high - low) / cells);
  let all = evaluated(firstMiddles(axes, size), dimensions, density);
  let logShare = -Math.log(axes.reduce((product, { cells }) => product * cells, 1));
  let best = Number.NEGATIVE_INFINITY;
  for (let round = 0; round < mostRounds && effective(all.logDensities) < enough; round++) {
    const before = best;
    best = highest(all.logDensities);
    if (best < floor && best < before + climbing) break;
    for (let axis = 0; axis < dimensions; axis++) size[axis] = (size[axis] ?? 0) / 2;
    logShare -= dimensions * Math.LN2;
    all = evaluated(halves(likeliest(all, dimensions), size), dimensions, density);
  }
  const { middles, logDensities } = all;
  return { middles, logDensities, size, logMean: logShare + logSum(logDensities) };
}

interface Cells {
  readonly middles: Float64Array;
  readonly logDensities: Float64Array;
}

function firstMiddles(axes: readonly Axis[], size: Float64Array): Float64Array {
  const points = axes.reduce<number[][]>(
    (before, { low, cells }, axis) =>
      before.flatMap((point) =>
        Array.from({ length: cells }, (_, cell) => [...point, low + (cell + 0.5) * (size[axis] ?? 0)]),
      ),
    [[]],
  );
  return Float64Array.from(points.flat());
}

function evaluated(middles: Float64Array, dimensions: number, density: LogDensity): Cells {
  const point = new Float64Array(dimensions);
  const logDensities = new Float64Array(middles.length / dimensions);
  for (let cell = 0; cell < logDensities.length; cell++) {
    for (let axis = 0; axis < dimensions; axis++) point[axis] = middles[cell * dimensions + axis] ?? 0;
    logDensities[cell] = density(point);
  }
  return { middles, logDensities };
}

/** Middles of the cells that are worth cutting. */
function likeliest({ middles, logDensities }: Cells, dimensions: number): Float64Array {
  const least = logDensities.toSorted().at(-most) ?? Number.NEGATIVE_INFINITY;
  const kept: number[] = [];
  for (let cell = 0; cell < logDensities.length; cell++) {
    const log = logDensities[cell] ?? 0;
    if (!(log >= least && log > Number.NEGATIVE_INFINITY)) continue;
    for (let axis = 0; axis < dimensions; axis++) kept.push(middles[cell * dimensions + axis] ?? 0);
  }
  return Float64Array.from(kept);
}

/** Both halves along every axis of each cell; `size` is that of the halves. */
function halves(middles: Float64Array, size: Float64Array): Float64Array {
  const dimensions = size.length;
  const parts = 2 ** dimensions;
  const into = new Float64Array(middles.length * parts);
  let next = 0;
  for (let cell = 0; cell < middles.length; cell += dimensions) {
    for (let part = 0; part < parts; part++) {
      for (let axis = 0; axis < dimensions; axis++) {
        const side = ((part >> axis) & 1) === 0 ? -0.5 : 0.5;
        into[next++] = (middles[cell + axis] ?? 0) + side * (size[axis] ?? 0);
      }
    }
  }
  return into;
}

function highest(logs: Float64Array): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < logs.length; index++) best = Math.max(best, logs[index] ?? best);
  return best;
}

function logSum(logs: Float64Array): number {
  const best = highest(logs);
  if (best === Number.NEGATIVE_INFINITY) return best;
  let sum = 0;
  for (let index = 0; index < logs.length; index++) sum += Math.exp((logs[index] ?? 0) - best);
  return best + Math.log(sum);
}

/** How many cells of equal density would spread as these do. */
function effective(logs: Float64Array): number {
  const best = highest(logs);
  let [sum, squares] = [0, 0];
  for (let index = 0; index < logs.length; index++) {
    const log = logs[index] ?? best;
    if (!(log > best - negligible)) continue;
    const weight = Math.exp(log - best);
    sum += weight;
    squares += weight * weight;
  }
  return squares === 0 ? Number.POSITIVE_INFINITY : (sum * sum) / squares;
}

/**
 * Draws points by the density: a cell by how likely it is, a place in it evenly, and what this leaves uneven is put right
 * by an independence chain (Tierney, The Annals of Statistics 22 (1994) 1701-1762). `take` gets each point; where the chain
 * stays, it gets the point before once more.
 */
export function drawFromCells(
  { middles, logDensities, size }: LikelyCells,
  density: LogDensity,
  count: number,
  random: RandomSource,
  take: (point: Float64Array) => void,
): void {
  const dimensions = size.length;
  const sums = runningSums(logDensities);
  let here = middles.slice(0, dimensions);
  let next = new Float64Array(dimensions);
  let ratio = Number.NEGATIVE_INFINITY;
  for (let draw = 0; draw < count; draw++) {
    const cell = placeOf(sums, random.uniform() * (sums.at(-1) ?? 0));
    for (let axis = 0; axis < dimensions; axis++) {
      next[axis] = (middles[cell * dimensions + axis] ?? 0) + (random.uniform() - 0.5) * (size[axis] ?? 0);
    }
    const found = density(next) - (logDensities[cell] ?? 0);
    if (random.uniform() < Math.exp(found - ratio)) {
      [here, next] = [next, here];
      ratio = found;
    }
    take(here);
  }
}

function runningSums(logs: Float64Array): Float64Array {
  const best = highest(logs);
  let sum = 0;
  return logs.map((log) => {
    sum += Math.exp(log - best);
    return sum;
  });
}

/** The first place whose running sum is above a value. */
function placeOf(sums: Float64Array, value: number): number {
  let [low, high] = [0, sums.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sums[middle] ?? 0) > value) high = middle;
    else low = middle + 1;
  }
  return low;
}
