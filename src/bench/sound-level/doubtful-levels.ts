import { groupedBy } from '../../registry/grouped-by.ts';
import { doubtfulInSample } from '../doubt/doubtful-in-sample.ts';
import { type DoubtfulReading, plainDoubts } from '../doubt/doubtful-reading.ts';
import type { Observations } from '../sheet/observations.ts';
import type { SoundLevelRun } from './sound-level-facts.ts';

/** Scatter of readings around a machine at one distance, dB, and what it counts in degrees of freedom (common practice, no source). */
const usual = { scatter: 1.5, freedom: 6 };
/** dB; a machine is louder by that on one of its sides. */
const least = 4;

/** The readings that lie farther from the others at the same distance than the sides of a machine do. */
export function doubtfulLevels(
  { columns, rows }: Observations,
  { levelResolution = 1 }: SoundLevelRun,
): DoubtfulReading[] {
  const noise = { usualScatter: usual.scatter, freedom: usual.freedom, resolution: levelResolution, least };
  return ['soundLevel', 'background'].flatMap((column) => {
    const readings = rows.flatMap((row, index) => {
      const y = columns[column]?.[index];
      return y === undefined ? [] : [{ row, x: columns.distance?.[index] ?? Number.NaN, y }];
    });
    const places = [...groupedBy(readings, ({ x }) => String(x)).values()];
    return places.flatMap((here) => plainDoubts(column, doubtfulInSample(here, noise)));
  });
}
