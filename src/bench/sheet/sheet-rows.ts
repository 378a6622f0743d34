import { failure, type Result, success } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { toCanonical } from '../../units/convert-unit.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { Observations } from './observations.ts';
import type { ColumnHead } from './sheet-columns.ts';
import type { SheetRow } from './sheet-row.ts';

/** Reads rows of text cells below their column heads as numbers in canonical units. */
export function sheetNumbers(
  heads: readonly ColumnHead[],
  rows: readonly SheetRow[],
): Result<Observations, readonly BenchProblem[]> {
  const problems: BenchProblem[] = [];
  const columns = heads.map(() => [] as number[]);
  for (const { cells, row } of rows) {
    if (cells.length !== heads.length) {
      problems.push(raggedRow(cells, heads, row));
      continue;
    }
    for (const [index, head] of heads.entries()) {
      const read = readCell(cells[index] ?? '', head, row);
      if (read.ok) columns[index]?.push(read.value);
      else problems.push(read.error);
    }
  }
  if (problems.length > 0) return failure(problems);
  return success({
    columns: Object.fromEntries(heads.map((head, index) => [head.name, columns[index] ?? []])),
    rows: rows.map(({ row }) => row),
  });
}

const decimal = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/;
const decimalWithComma = /^[+-]?\d+,\d+$/;

function readCell(cell: string, { name, unit }: ColumnHead, row: number): Result<number, BenchProblem> {
  const at = { found: quote(cell), row };
  if (decimal.test(cell)) return success(toCanonical(Number(cell), unit));
  if (cell === '') {
    return failure({
      code: 'emptyCell',
      message: `${name} has no value here`,
      help: 'write the reading, or delete the row if it was not taken',
      ...at,
    });
  }
  if (decimalWithComma.test(cell)) {
    return failure({
      code: 'decimalComma',
      message: `${name} \`${quote(cell)}\` has a decimal comma`,
      help: `write a decimal point: ${quote(cell.replace(',', '.'))}`,
      ...at,
    });
  }
  return failure({
    code: 'notANumber',
    message: `${name} \`${quote(cell)}\` is not a number`,
    help: `write the number alone, in ${unit.code} as the header says; put remarks into the notes of the trial`,
    ...at,
  });
}

function raggedRow(cells: readonly string[], heads: readonly ColumnHead[], row: number): BenchProblem {
  const names = heads.map((head) => head.name).join(', ');
  const tooMany = cells.length > heads.length;
  return {
    code: 'raggedRow',
    message: `the row has ${cells.length === 1 ? '1 cell' : `${cells.length} cells`}, the header ${heads.length}`,
    found: quote(cells.join(',')),
    help: tooMany
      ? `write one cell each for ${names}; a decimal comma splits a number in two, use a point`
      : `write one cell each for ${names}`,
    row,
  };
}
