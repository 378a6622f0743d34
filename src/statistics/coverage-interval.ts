/** An interval that contains the quantity with a stated probability. */
export interface CoverageInterval {
  readonly low: number;
  readonly high: number;
  /** Probability, 0 to 1. */
  readonly coverage: number;
}

/** Draws in ascending order, ready for the functions below. */
export function sortedDraws(draws: Iterable<number>): Float64Array {
  return new Float64Array(draws).sort();
}

/**
 * The quantile of sorted draws at a probability in [0, 1], interpolated between neighbours
 * (Hyndman and Fan, "Sample quantiles in statistical packages", The American Statistician 50 (1996) 361, definition 7).
 */
export function quantile(sorted: Float64Array, probability: number): number {
  const last = sorted.length - 1;
  const position = Math.min(last, Math.max(0, probability * last));
  const below = Math.floor(position);
  const low = sorted[below] ?? Number.NaN;
  const high = sorted[Math.min(last, below + 1)] ?? Number.NaN;
  return low + (high - low) * (position - below);
}

/**
 * The same quantiles of draws in any order, at probabilities that ascend: only what they ask for is put in its place
 * (Hoare, "Algorithm 65: find", Communications of the ACM 4 (1961) 321), in a fraction of the time of sorting.
 */
export function drawnQuantiles(draws: Iterable<number>, probabilities: readonly number[]): number[] {
  const values = new Float64Array(draws);
  const last = values.length - 1;
  let from = 0;
  return probabilities.map((probability) => {
    const position = Math.min(last, Math.max(0, probability * last));
    const below = Math.floor(position);
    const above = Math.min(last, below + 1);
    putInPlace(values, below, from);
    putInPlace(values, above, below);
    from = below;
    const low = values[below] ?? Number.NaN;
    return low + ((values[above] ?? Number.NaN) - low) * (position - below);
  });
}

/** Puts at a place what stands there in ascending order, nothing larger before it and nothing smaller behind. */
function putInPlace(values: Float64Array, place: number, from: number): void {
  const ends = new Int32Array(2);
  let low = from;
  let high = values.length - 1;
  while (low < high) {
    ends[0] = low;
    ends[1] = high;
    part(values, values[place] ?? 0, ends);
    const larger = ends[0];
    const smaller = ends[1];
    if (smaller < place) low = larger;
    if (place < larger) high = smaller;
  }
}

/**
 * Parts the stretch between two ends that holds a value into what is no larger and what is no smaller: the ends become where
 * the latter begins and the former ends. They are written in place, since a pair for each would be a million objects.
 */
function part(values: Float64Array, value: number, ends: Int32Array): void {
  let left = ends[0] ?? 0;
  let right = ends[1] ?? 0;
  while (left <= right) {
    while ((values[left] ?? 0) < value) left += 1;
    while ((values[right] ?? 0) > value) right -= 1;
    if (left > right) break;
    const swapped = values[left] ?? 0;
    values[left] = values[right] ?? 0;
    values[right] = swapped;
    left += 1;
    right -= 1;
  }
  ends[0] = left;
  ends[1] = right;
}

/** The probabilistically symmetric coverage interval: equal tails on both sides (JCGM 101:2008, 3.15 and 7.7). */
export function symmetricInterval(sorted: Float64Array, coverage: number): CoverageInterval {
  const tail = (1 - coverage) / 2;
  return { low: quantile(sorted, tail), high: quantile(sorted, 1 - tail), coverage };
}

/** The shortest interval that holds the stated share of the draws (JCGM 101:2008, 3.16 and 7.7.4). */
export function shortestInterval(sorted: Float64Array, coverage: number): CoverageInterval {
  const span = Math.min(sorted.length - 1, Math.round(coverage * sorted.length));
  let start = 0;
  let width = Number.POSITIVE_INFINITY;
  for (let index = 0; index + span < sorted.length; index++) {
    const candidate = (sorted[index + span] ?? Number.NaN) - (sorted[index] ?? Number.NaN);
    if (candidate < width) {
      width = candidate;
      start = index;
    }
  }
  return { low: sorted[start] ?? Number.NaN, high: sorted[start + span] ?? Number.NaN, coverage };
}
