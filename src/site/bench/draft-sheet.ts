import { csvCell } from '../../text/csv.ts';
import type { Draft, DraftColumn, NamedRow } from './draft.ts';
import { readTyped } from './typed-number.ts';

/** Rows of a draft that the sheet can hold, and those that lack something. */
interface SortedRows {
  /** The columns that the sheet has: one in which nothing was typed, and which the method can do without, is left out. */
  readonly columns: readonly DraftColumn[];
  readonly complete: readonly NamedRow[];
  /** Rows with some readings but not all, or with something that is no number. */
  readonly open: readonly NamedRow[];
}

/** Tells the rows that are ready from those that are not; of a row without any reading nothing is said. */
export function sortedRows({ head, rows }: Draft): SortedRows {
  const isTyped = (index: number) => rows.some(({ cells }) => (cells[index] ?? '').trim() !== '');
  const kept = head.columns.map(({ isOptional }, index) => !isOptional || isTyped(index));
  const kinds = (row: NamedRow) =>
    head.columns.flatMap((column, index) =>
      kept[index] === true ? [{ column, kind: readTyped(row.cells[index] ?? '').kind }] : [],
    );
  const isComplete = (row: NamedRow) => kinds(row).every(({ kind }) => kind === 'number');
  const isBegun = (row: NamedRow) =>
    kinds(row).some(({ column, kind }) => !column.isGiven && kind !== 'empty');
  return {
    columns: head.columns.filter((_, index) => kept[index]),
    complete: rows.filter(isComplete),
    open: rows.filter((row) => isBegun(row) && !isComplete(row)),
  };
}

/** The bench sheet (RFC 4180) of rows, with the digits that were typed, as `reduce` reads it; notes stand in a last column. */
export function formatSheet({ head }: Draft, { columns, complete }: SortedRows): string {
  const hasNotes = complete.some(({ note }) => note !== '');
  const header = [...columns.map(({ name, unit }) => `${name} [${unit}]`), ...(hasNotes ? ['note'] : [])];
  const lines = complete.map(({ cells, note }) => [
    ...columns.map((column) => numberText(cells[head.columns.indexOf(column)] ?? '')),
    ...(hasNotes ? [csvCell(note)] : []),
  ]);
  return [header.map(csvCell), ...lines].map((cells) => `${cells.join(',')}\r\n`).join('');
}

function numberText(cell: string): string {
  const read = readTyped(cell);
  return read.kind === 'number' ? read.text : '';
}
