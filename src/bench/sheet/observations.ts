/** No instrument shows more, in any unit; what is reckoned from a reading of this size is still a number that can be written. */
const largestReading = 1e30;

/** Whether a number in its canonical unit can be a reading at all. */
export function isReading(value: number): boolean {
  return Math.abs(value) <= largestReading;
}

/** Raw readings of a bench run: equally long columns of numbers in canonical units. */
export interface Observations {
  readonly columns: Readonly<Record<string, readonly number[]>>;
  /** For each row where it was written: the line of the file, or its place in an inline list counted from 1. */
  readonly rows: readonly number[];
}
