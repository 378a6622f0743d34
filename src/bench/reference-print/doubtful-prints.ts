import { doubtfulInSample } from '../doubt/doubtful-in-sample.ts';
import { type DoubtfulReading, relativeDoubts } from '../doubt/doubtful-reading.ts';
import type { Observations } from '../sheet/observations.ts';

/** Relative scatter from one print of a job to the next, what it counts in degrees of freedom, and what is no slip (common practice, no source). */
const usual = {
  printTime: { usualScatter: 0.004, freedom: 6, resolution: 0, least: 0.02 },
  mass: { usualScatter: 0.013, freedom: 6, resolution: 0, least: 0.05 },
} as const;

/** The times and masses of prints that lie farther from the other prints of the job than prints do. */
export function doubtfulPrints({ columns, rows }: Observations): DoubtfulReading[] {
  return (['printTime', 'mass'] as const).flatMap((column) => {
    const readings = rows.flatMap((row, index) => {
      const read = columns[column]?.[index];
      return read === undefined ? [] : [{ row, x: 0, y: Math.log(read) }];
    });
    return relativeDoubts(column, doubtfulInSample(readings, usual[column]));
  });
}
