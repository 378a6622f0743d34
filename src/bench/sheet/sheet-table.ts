import { failure, type Result, success } from '../../result.ts';
import { type CellSeparator, type CsvProblem, cellSeparators, readCsv } from '../../text/csv.ts';
import { kindOfText } from '../../text/other-kind.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { SheetRow } from './sheet-row.ts';

/** Cells of a sheet before it is known what they mean: a header, and rows below it. */
export interface SheetTable {
  readonly header: SheetRow;
  /** None of them empty. */
  readonly rows: readonly SheetRow[];
  /** What stands between the cells of a text; null for those of a workbook. */
  readonly separator: CellSeparator | null;
}

/** Rows that a sheet must have: none where a run may not have begun. */
export type FewestRows = 0 | 1;

/** More readings than a bench run can hold, small enough to refuse a wrong file at once; in characters. */
export const largestSheet = 1_000_000;

/** The same in rows below the header and in columns: a run has a thousand readings at most, and some notes beside them. */
export const mostOfSheet = { rows: 5000, columns: 100 } as const;

/**
 * Reads the text of a bench sheet as a table. A byte-order mark, a `sep=` line and blank rows are passed over. A sheet with fewer
 * rows than asked is refused: with none, unless the run may not have begun.
 */
export function readSheetText(
  text: string,
  fewestRows: FewestRows = 1,
): Result<SheetTable, readonly BenchProblem[]> {
  if (text.length > largestSheet) return failure([tooLarge(text.length)]);
  const kind = kindOfText(text);
  if (kind !== null) return failure([otherKind(kind)]);
  const { separator, skipped } = separatorOf(text);
  const records = readCsv(text, separator, skipped + 1 + mostOfSheet.rows);
  if (!records.ok) return failure([malformed(records.error, separator)]);
  const rows = records.value.slice(skipped).map(({ cells, line }) => ({ cells, row: line }));
  return tableOf(rows, separator, fewestRows);
}

/** A table of rows, the first of which with something in it is the header; empty columns at the right are left out. */
export function tableOf(
  all: readonly SheetRow[],
  separator: CellSeparator | null,
  fewestRows: FewestRows = 1,
): Result<SheetTable, readonly BenchProblem[]> {
  const [header, ...rows] = all.filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (header === undefined || rows.length < fewestRows) return failure([emptySheet(header === undefined)]);
  const width = header.cells.findLastIndex((cell) => cell !== '') + 1;
  if (rows.length > mostOfSheet.rows) return failure([tooMany(`more than ${mostOfSheet.rows} rows`)]);
  if (width > mostOfSheet.columns) return failure([tooMany(`${width} columns`)]);
  const trimmed = [header, ...rows].map((row) => withoutEmptyEnd(row, width));
  return success({ header: trimmed[0] ?? header, rows: trimmed.slice(1), separator });
}

/** A row without what spreadsheets write for empty columns beyond the last heading. */
function withoutEmptyEnd({ cells, row }: SheetRow, width: number): SheetRow {
  const last = cells.findLastIndex((cell) => cell !== '') + 1;
  return cells.length > width ? { cells: cells.slice(0, Math.max(width, last)), row } : { cells, row };
}

/** The separator that a first line `sep=;` names, or else the one in the header; and how many records to pass over. */
function separatorOf(text: string): { readonly separator: CellSeparator; readonly skipped: 0 | 1 } {
  const named = /^\uFEFF?"?sep=([,;|\t])"?[ ,;|\t]*(?:\r|\n)/i.exec(text.slice(0, 20))?.[1];
  const separator = cellSeparators.find((sign) => sign === named);
  return separator === undefined
    ? { separator: separatorIn(firstLine(text)), skipped: 0 }
    : { separator, skipped: 1 };
}

/** Tabulators and semicolons stand in no heading, while a comma may: `mass, g`. */
function separatorIn(header: string): CellSeparator {
  const bare = header.replace(/"[^"]*"/g, '').replace(/\[[^\]]*\]|\([^)]*\)/g, '');
  return (['\t', ';', ',', '|'] as const).find((sign) => bare.includes(sign)) ?? ',';
}

/** Enough of a header to see what separates its cells, in characters. */
const longestHeader = 4000;

function firstLine(text: string): string {
  const beginning = /^[\uFEFF\s]*([^\r\n]*)/.exec(text)?.[1] ?? '';
  return beginning.slice(0, longestHeader);
}

/** What stands between the cells, in words. */
export function separatorWords(separator: CellSeparator): string {
  return { ',': 'commas', ';': 'semicolons', '\t': 'tabulators', '|': 'vertical bars' }[separator];
}

function malformed({ message, line }: CsvProblem, separator: CellSeparator): BenchProblem {
  const what =
    separator === ',' ? 'comma-separated values' : `values separated by ${separatorWords(separator)}`;
  return {
    code: 'malformedSheet',
    message: `not ${what}: ${message.charAt(0).toLowerCase()}${message.slice(1)}`,
    help: 'put quotation marks around whole cells only, and close each one; numbers need none',
    row: line,
  };
}

/** A file that is something else than a table. */
export function otherKind(kind: string): BenchProblem {
  return {
    code: 'otherKind',
    message: `this is ${kind}, not a bench sheet`,
    found: kind,
    help: 'name a table with a header row and one row per reading: CSV, or a workbook (.xlsx)',
  };
}

function emptySheet(whole: boolean): BenchProblem {
  return {
    code: 'emptySheet',
    message: whole ? 'the sheet is empty' : 'the sheet has a header and no readings',
    help: 'write one row per reading below a header of `name [unit]`, such as `commandedFlow [mm3/s]`',
  };
}

/** Rows beyond the most are not even counted. */
function tooMany(found: string): BenchProblem {
  return {
    code: 'sheetTooLarge',
    message: `the sheet has ${found}; ${mostOfSheet.rows} rows and ${mostOfSheet.columns} columns are read`,
    found,
    help: 'write one row per piece that was weighed or graded; a controller log is not a bench sheet',
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
