import type { CellSeparator } from '../../text/csv.ts';
import { quote } from '../../text/quote.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { SheetColumn } from './sheet-columns.ts';
import type { SheetCell, SheetRow } from './sheet-row.ts';

/** Most readings of a row that a message shows. */
const mostReadings = 3;

/** A row that has not as many cells as its sheet has columns. */
export function raggedRow(
  { cells, row }: SheetRow,
  columns: readonly SheetColumn[],
  separator: CellSeparator | null,
): BenchProblem {
  if (/^(?:<{7}|={7}|>{7})/.test(String(cells[0]))) return lineOfMerge(cells, row);
  const names = columns.map(({ head, heading }) => head?.name ?? quote(heading)).join(', ');
  const readings = separator === ',' ? joinedRows(cells, cells.length - columns.length) : [];
  const shown = readings.map((reading) => `\`${reading.map(quote).join(' | ')}\``).join(' or ');
  const hint = shown === '' ? '' : `: this row can be read as ${shown}`;
  return {
    code: 'raggedRow',
    message: `the row has ${cells.length === 1 ? '1 cell' : `${cells.length} cells`}, the header ${columns.length}`,
    found: quote(cells.join(separator ?? ',')),
    help:
      cells.length > columns.length && separator === ','
        ? `write one cell each for ${names}; a decimal comma splits a number in two, use a point${hint}`
        : `write one cell each for ${names}`,
    row,
  };
}

function lineOfMerge(cells: readonly SheetCell[], row: number): BenchProblem {
  return {
    code: 'raggedRow',
    message: 'both sides of a merge stand in the sheet: this line marks one of them',
    found: quote(cells.join(' ')),
    help: 'keep the rows that were read, and remove the lines that begin with `<<<<<<<`, `=======` and `>>>>>>>`',
    row,
  };
}

/** Some of the rows that come out where commas are taken for decimal ones, as many as there are cells too many. */
function joinedRows(cells: readonly SheetCell[], commas: number): (readonly SheetCell[])[] {
  if (commas === 0) return [cells];
  if (commas < 0 || commas > 8 || cells.length > 40) return [];
  const [first, second, ...rest] = cells;
  if (first === undefined || second === undefined) return [];
  const isNumber = /^[+-]?\d+$/.test(`${first}`) && /^\d+$/.test(`${second}`);
  const joined = isNumber ? joinedRows(rest, commas - 1).map((row) => [`${first}.${second}`, ...row]) : [];
  if (joined.length >= mostReadings) return joined.slice(0, mostReadings);
  const apart = joinedRows(cells.slice(1), commas).map((row) => [first, ...row]);
  return [...joined, ...apart].slice(0, mostReadings);
}
