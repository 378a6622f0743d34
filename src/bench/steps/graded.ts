import type { Fact } from '../facts/fact.ts';
import type { Observations } from '../sheet/observations.ts';
import type { SeriesNoise } from './step-series.ts';

/** Lowest grade that passes where a run states none (common practice, no source). */
const usualAcceptedGrade = 4;

/** Lowest grade that passes, 2 to 5. */
export const acceptedGrade: Fact<number> = {
  what: 'lowest acceptable grade, default 4',
  form: 'wholeNumber',
  example: '4',
  possible: {
    holds: (grade) => Number.isInteger(grade) && grade >= 2 && grade <= 5,
    words: 'a whole number from 2 to 5',
  },
  flag: 'grade',
  statedIn: 'trial',
  place: 'acceptedGrade',
  read: (trial) => trial.acceptedGrade,
};

/**
 * A grade is a quality on a continuous scale, rounded to a whole number; graders differ by a third of a grade or so
 * (common practice, no source).
 */
export const gradeNoise: SeriesNoise = { usualScatter: 0.3, resolution: () => 1 };

/** The quality at which specimens begin to be given the lowest grade that passes. */
export function acceptedQuality(lowestGrade: number = usualAcceptedGrade): number {
  return lowestGrade - 0.5;
}

/** Whether observations hold grades instead of measurements. */
export function isGraded({ columns }: Observations): boolean {
  return columns.grade !== undefined;
}
