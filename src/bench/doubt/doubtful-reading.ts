/** A reading that the others of its sheet do not let expect, all numbers in the canonical unit of its column. */
export interface DoubtfulReading {
  /** The line of the file, or the place in an inline list counted from 1. */
  readonly row: number;
  readonly column: string;
  readonly found: number;
  readonly expected: number;
  /** Standard deviation with which the others let expect it; a share of what is expected where `isRelative`. */
  readonly spread: number;
  readonly isRelative: boolean;
  /** The one repeat that contradicts it, where the others do not tell which of both is off; null where they do. */
  readonly rival: Rival | null;
}

/** A reading that may be off instead of another one. */
interface Rival {
  readonly row: number;
  readonly found: number;
}

/** A reading on the scale on which readings of its kind scatter alike. */
export interface ScaledReading {
  readonly row: number;
  readonly x: number;
  readonly y: number;
}

/** A reading with what the others let expect of it, on the scale of its kind. */
export interface Unexpected {
  readonly reading: ScaledReading;
  readonly expected: number;
  readonly spread: number;
  /** The one repeat that may be off instead, where the others do not tell which of both is. */
  readonly rival: ScaledReading | null;
}

/** More of them are no slips of a pen, but an unsteady run. */
const mostSlips = 3;

/** The readings that are not as expected, one after another, each judged without those before it. */
export function oneAfterAnother(
  readings: readonly ScaledReading[],
  worstOf: (rest: readonly ScaledReading[]) => Unexpected | null,
): Unexpected[] {
  const found: Unexpected[] = [];
  let rest = readings;
  while (found.length < mostSlips) {
    const worst = worstOf(rest);
    if (worst === null) break;
    found.push(worst);
    rest = rest.filter((reading) => reading !== worst.reading);
  }
  return found;
}

/** Unexpected readings of a column whose scale is the logarithm of what was read. */
export function relativeDoubts(column: string, found: readonly Unexpected[]): DoubtfulReading[] {
  return doubts(column, found, true);
}

/** Unexpected readings of a column whose scale is what was read. */
export function plainDoubts(column: string, found: readonly Unexpected[]): DoubtfulReading[] {
  return doubts(column, found, false);
}

function doubts(column: string, found: readonly Unexpected[], isRelative: boolean): DoubtfulReading[] {
  const read = isRelative ? Math.exp : Number;
  return found.map(({ reading, expected, spread, rival }) => ({
    ...{ row: reading.row, column, spread, isRelative },
    found: read(reading.y),
    expected: read(expected),
    rival: rival && { row: rival.row, found: read(rival.y) },
  }));
}
