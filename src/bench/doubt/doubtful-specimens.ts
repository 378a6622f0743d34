import type { Observations } from '../sheet/observations.ts';
import { gradeNoise, isGraded } from '../steps/graded.ts';
import { doubtfulInSeries, pooledScatter, type SeriesCourse } from './doubtful-in-series.ts';
import { type DoubtfulReading, plainDoubts, relativeDoubts, type ScaledReading } from './doubtful-reading.ts';

/** How specimens over a setting are read. */
interface Specimens {
  /** Column of the setting. */
  readonly setting: string;
  /** Column of what is measured where they are not graded. */
  readonly measured: string;
  /** Relative scatter of measured specimens (common practice, no source). */
  readonly usualScatter: number;
  /** Step of the instrument in the unit of what is measured; 0 where it does not count. */
  readonly resolution: number;
}

/** Specimens that the usual scatter counts for (common practice, no source). */
const priorFreedom = 4;
/** Grades, and shares of a measurement, that are less far off are no slip (common practice, no source). */
const leastGrades = 1.5;
const leastShare = 0.08;

/** The specimens whose reading neither their repeats nor the settings beside them let expect, by grades or by measurements. */
export function doubtfulSpecimens(observations: Observations, specimens: Specimens): DoubtfulReading[] {
  const { columns, rows } = observations;
  const { setting, measured, usualScatter, resolution } = specimens;
  const graded = isGraded(observations);
  const [settings = [], read = []] = [columns[setting], columns[graded ? 'grade' : measured]];
  const smallest = resolution > 0 ? resolution / 2 : Number.MIN_VALUE;
  const readings = rows.map((row, index): ScaledReading => {
    const value = read[index] ?? Number.NaN;
    return { row, x: settings[index] ?? Number.NaN, y: graded ? value : Math.log(Math.max(value, smallest)) };
  });
  const usual = { scatter: graded ? gradeNoise.usualScatter : usualScatter, freedom: priorFreedom };
  const course: SeriesCourse = {
    course: 'any',
    scatterAt: (_, others) => pooledScatter(others, usual),
    resolutionAt: (level) => (graded ? 1 : Math.min(1, resolution / Math.exp(level))),
    least: graded ? leastGrades : leastShare,
  };
  const found = doubtfulInSeries(readings, course);
  return graded ? plainDoubts('grade', found) : relativeDoubts(measured, found);
}
