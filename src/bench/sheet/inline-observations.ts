import { failure, type Result, success } from '../../result.ts';
import { toCanonical } from '../../units/convert-unit.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { ColumnPlan } from './column-plan.ts';
import { isReading, type Observations } from './observations.ts';
import { type ColumnHead, matchColumns } from './sheet-columns.ts';

/** Observations as a trial holds them: columns with their units in the order of the cells, and rows of numbers. */
interface InlineObservations {
  readonly columns: Readonly<Record<string, string>>;
  readonly rows: readonly (readonly number[])[];
}

/** Reads inline observations as columns in canonical units; `plan` as for `readBenchSheet`. */
export function readInlineObservations(
  inline: InlineObservations,
  plan: ColumnPlan,
): Result<Observations, readonly BenchProblem[]> {
  const heads = matchColumns(
    Object.entries(inline.columns).map(([name, unit]) => ({ name, unit })),
    plan,
  );
  if (!heads.ok) return heads;
  if (inline.rows.length === 0) {
    return failure([
      { code: 'emptySheet', message: 'there are no readings', help: 'write one row per reading' },
    ]);
  }
  const problems = inline.rows.flatMap((cells, index) => rowProblems(cells, heads.value, index + 1));
  if (problems.length > 0) return failure(problems);
  return success({
    columns: Object.fromEntries(
      heads.value.map(({ name, unit }, column) => [
        name,
        inline.rows.map((cells) => toCanonical(cells[column] ?? Number.NaN, unit)),
      ]),
    ),
    rows: inline.rows.map((_, index) => index + 1),
  });
}

function rowProblems(cells: readonly number[], heads: readonly ColumnHead[], row: number): BenchProblem[] {
  const expected = heads.length;
  if (cells.length !== expected) {
    return [
      {
        code: 'raggedRow',
        message: `the row has ${cells.length} numbers, there are ${expected} columns`,
        found: `[${cells.join(', ')}]`,
        help:
          cells.length > expected
            ? 'write one number per column; a decimal comma splits a number in two, use a point'
            : 'write one number per column, in the order of the columns',
        row,
      },
    ];
  }
  return cells
    .filter((cell, column) => !canBeRead(cell, heads[column]))
    .map((cell) => ({
      code: 'notANumber',
      message: `${cell} is not a reading`,
      found: String(cell),
      help: 'write the number that was read',
      row,
    }));
}

function canBeRead(cell: number, head: ColumnHead | undefined): boolean {
  return head !== undefined && isReading(toCanonical(cell, head.unit));
}
