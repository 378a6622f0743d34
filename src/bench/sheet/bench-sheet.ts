import { failure, type Result, success } from '../../result.ts';
import { type CsvProblem, readCsv } from '../../text/csv.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { ColumnPlan } from './column-plan.ts';
import type { Observations } from './observations.ts';
import { readColumnHeads } from './sheet-columns.ts';
import type { SheetRow } from './sheet-row.ts';
import { sheetNumbers } from './sheet-rows.ts';

/** More readings than a bench run can hold, small enough to refuse a wrong file at once; in characters. */
export const largestSheet = 1_000_000;

/**
 * Reads a bench sheet: comma-separated values (RFC 4180) with a header row of `name [unit]`, as observations in
 * canonical units. `plan` names the columns that must or may be there, in any order; no others may be. A byte order mark, blank rows and spaces around cells are tolerated.
 */
export function readBenchSheet(
  text: string,
  plan: ColumnPlan,
): Result<Observations, readonly BenchProblem[]> {
  if (text.length > largestSheet) return failure([tooLarge(text.length)]);
  const records = readRecords(text);
  if (!records.ok) return records;
  const [header, ...rows] = records.value;
  if (header === undefined || rows.length === 0) return failure([emptySheet(header === undefined)]);
  const delimiter = otherDelimiter(header.cells);
  if (delimiter !== undefined) return failure([wrongDelimiter(delimiter, header.row)]);
  const heads = readColumnHeads(header, plan);
  return heads.ok ? sheetNumbers(heads.value, rows) : heads;
}

function readRecords(text: string): Result<SheetRow[], readonly BenchProblem[]> {
  const records = readCsv(text);
  if (!records.ok) return failure([malformed(records.error)]);
  const rows = records.value.map(({ cells, line }) => ({ cells, row: line }));
  return success(rows.filter(({ cells }) => cells.some((cell) => cell !== '')));
}

function otherDelimiter(cells: readonly string[]): string | undefined {
  return cells.length === 1 ? [';', '\t', '|'].find((sign) => cells[0]?.includes(sign)) : undefined;
}

function malformed({ message, line }: CsvProblem): BenchProblem {
  return {
    code: 'malformedSheet',
    message: `not comma-separated values: ${message.charAt(0).toLowerCase()}${message.slice(1)}`,
    help: 'put quotation marks around whole cells only, and close each one; numbers need none',
    row: line,
  };
}

function wrongDelimiter(delimiter: string, row: number): BenchProblem {
  const found = delimiter === '\t' ? 'tabulators' : delimiter;
  return {
    code: 'malformedSheet',
    message: `the cells are separated by ${found} instead of commas`,
    found,
    help: 'export the sheet as comma-separated values (RFC 4180) with decimal points',
    row,
  };
}

function emptySheet(whole: boolean): BenchProblem {
  return {
    code: 'emptySheet',
    message: whole ? 'the sheet is empty' : 'the sheet has a header and no readings',
    help: 'write one row per reading below a header of `name [unit]`, such as `commandedFlow [mm3/s]`',
  };
}

function tooLarge(length: number): BenchProblem {
  return {
    code: 'sheetTooLarge',
    message: `the sheet has ${length} characters; ${largestSheet} are read`,
    found: String(length),
    help: 'check that this is a bench sheet; one run fills a few kilobytes',
  };
}
