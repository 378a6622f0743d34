import { formatNumber } from '../../units/format-quantity.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { Observations } from './observations.ts';

/** Readings that are not above 0, in the columns named. */
export function notPositiveReadings(
  { columns, rows }: Observations,
  names: readonly string[],
  help: string,
): BenchProblem[] {
  return names.flatMap((name) =>
    [...(columns[name] ?? []).entries()]
      .filter(([, value]) => !(value > 0 && Number.isFinite(value)))
      .map(([index, value]) => ({
        code: 'notPositive',
        message: `${name} is ${value}, but a reading must be above 0`,
        found: String(value),
        help,
        row: rows[index] ?? index + 1,
      })),
  );
}

/** Readings below 0, in a column where 0 may stand. */
export function negativeReadings({ columns, rows }: Observations, name: string): BenchProblem[] {
  return [...(columns[name] ?? []).entries()]
    .filter(([, value]) => !(value >= 0 && Number.isFinite(value)))
    .map(([index, value]) => ({
      code: 'negative',
      message: `${name} is ${value}, but a reading must be 0 or more`,
      found: String(value),
      help: 'write what was read',
      row: rows[index] ?? index + 1,
    }));
}

/** A table that is there twice: its second half equals its first over so many different values of a column. */
export function repeatedTable({ columns, rows }: Observations, name: string, fewest: number): BenchProblem[] {
  const half = rows.length / 2;
  if (!Number.isInteger(half) || half < fewest) return [];
  const same = Object.values(columns).every((values) =>
    values.slice(0, half).every((value, index) => value === values[half + index]),
  );
  if (!same || new Set(columns[name]?.slice(0, half)).size < fewest) return [];
  return [
    {
      code: 'repeatedTable',
      message: `from here on the rows repeat the first ${half} digit for digit`,
      help: 'delete the copy: pasted rows would count as repeats and narrow the interval',
      row: rows[half] ?? half + 1,
    },
  ];
}

const mostValues = 200;
const mostReadings = 1000;

/** More readings, or more different values of a column, than a bench run has; each costs time, and a stranger's sheet may hold thousands. */
export function tooManyValues({ columns, rows }: Observations, name: string): BenchProblem[] {
  const count = new Set(columns[name]).size;
  if (rows.length > mostReadings) {
    return [
      {
        code: 'tooManyReadings',
        message: `there are ${rows.length} readings, but a bench run has at most ${mostReadings}`,
        found: String(rows.length),
        help: 'write one row per piece that was weighed or graded; a controller log is not a bench sheet',
      },
    ];
  }
  if (count <= mostValues) return [];
  return [
    {
      code: 'tooManyValues',
      message: `${name} has ${count} different values, but a bench run has at most ${mostValues}`,
      found: String(count),
      help: 'check whether two columns are swapped; write the setting that was commanded, not what a log shows',
    },
  ];
}

/** Too few different values of a column. */
export function tooFewValues(
  { columns }: Observations,
  name: string,
  fewest: number,
  help: string,
): BenchProblem[] {
  const count = new Set(columns[name]).size;
  if (count >= fewest) return [];
  return [
    {
      code: 'tooFewSteps',
      message: `there are ${count} different values of ${name}, but a result needs ${fewest}`,
      found: String(count),
      help,
    },
  ];
}

/** Readings whose value lies outside of what the column can hold; `expected` says what that is. */
export function outsideReadings(
  { columns, rows }: Observations,
  name: string,
  [lowest, highest]: readonly [number, number],
  expected: string,
): BenchProblem[] {
  const values = columns[name] ?? [];
  const index = values.findIndex((value) => value < lowest || value > highest);
  if (index === -1) return [];
  const found = formatNumber(values[index] ?? Number.NaN, { significantDigits: 6 });
  return [
    {
      code: 'implausibleReading',
      message: `${name} is ${found} in canonical units, ${expected}`,
      found,
      help: 'check whether two columns are swapped, the unit in the column heading, and the decimal point',
      row: rows[index] ?? index + 1,
    },
  ];
}

/** Grades that are no whole number from 1 to 5. */
export function badGrades({ columns, rows }: Observations): BenchProblem[] {
  return [...(columns.grade ?? []).entries()]
    .filter(([, grade]) => !(Number.isInteger(grade) && grade >= 1 && grade <= 5))
    .map(([index, grade]) => ({
      code: 'badGrade',
      message: `the grade ${grade} is not one of 1, 2, 3, 4, 5`,
      found: String(grade),
      help: 'write a whole number from 1 (useless) to 5 (faultless); check whether two columns are swapped',
      row: rows[index] ?? index + 1,
    }));
}
