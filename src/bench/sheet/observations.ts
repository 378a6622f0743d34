/** Raw readings of a bench run: equally long columns of numbers in canonical units. */
export interface Observations {
  readonly columns: Readonly<Record<string, readonly number[]>>;
  /** For each row where it was written: the line of the file, or its place in an inline list counted from 1. */
  readonly rows: readonly number[];
}
