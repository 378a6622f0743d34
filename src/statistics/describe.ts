/** Summary of a series of readings, in the unit of the readings. */
export interface Description {
  readonly count: number;
  readonly mean: number;
  /** With denominator count - 1; NaN for fewer than two readings. */
  readonly standardDeviation: number;
  /** Lag-1 autocorrelation; NaN when the readings do not vary. */
  readonly autocorrelation: number;
}

/**
 * Count, mean, standard deviation and lag-1 autocorrelation of readings, by the corrected two-pass algorithm
 * (Chan, Golub, LeVeque, "Algorithms for computing the sample variance", The American Statistician 37 (1983) 242-247,
 * eq. 1.7) over compensated sums.
 */
export function describe(readings: ArrayLike<number>): Description {
  const values = Array.from(readings);
  const count = values.length;
  const mean = compensatedSum(values) / count;
  const deviations = values.map((value) => value - mean);
  const remainder = compensatedSum(deviations);
  const square = compensatedSum(deviations.map((deviation) => deviation * deviation));
  const products = deviations.slice(1).map((deviation, index) => deviation * (deviations[index] ?? 0));
  return {
    count,
    mean,
    standardDeviation: Math.sqrt((square - (remainder * remainder) / count) / (count - 1)),
    autocorrelation: compensatedSum(products) / square,
  };
}

/** Neumaier's compensated sum (ZAMM 54 (1974) 39-51): the error does not grow with the number of terms. */
export function compensatedSum(terms: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const term of terms) {
    const next = sum + term;
    lost += Math.abs(sum) >= Math.abs(term) ? sum - next + term : term - next + sum;
    sum = next;
  }
  return sum + lost;
}
