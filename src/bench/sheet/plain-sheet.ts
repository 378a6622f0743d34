import { csvCell } from '../../text/csv.ts';
import type { CharacterEncoding } from '../../text/decode-text.ts';
import { oneLine } from '../../text/one-line.ts';
import type { ReadSheet } from './bench-sheet.ts';
import { plainNumber } from './number-forms.ts';
import type { SheetColumn } from './sheet-columns.ts';
import type { SheetCell } from './sheet-row.ts';
import type { SheetTable } from './sheet-table.ts';

/** Whether a sheet is written as the program writes them: UTF-8, commas, decimal points and the names of the columns. */
export function isPlainSheet(
  { separator, decimal, columns }: ReadSheet,
  encoding: CharacterEncoding | null,
): boolean {
  return encoding === 'UTF-8' && separator === ',' && decimal !== ',' && columns.every(isNamedPlainly);
}

/** Whether a heading is the name of its column with the unit in brackets, or that of a note. */
function isNamedPlainly({ head, heading }: SheetColumn): boolean {
  return head === null || (isNamedExactly({ head, heading }) && heading.endsWith(']'));
}

/** Whether a heading begins with the name of its column, or is that of a note. */
export function isNamedExactly({ head, heading }: SheetColumn): boolean {
  return head === null || heading.split(/[\s[]/)[0] === head.name;
}

/** The same sheet as plain comma-separated values, with the digits that were typed and in the units that they were typed in. */
export function formatPlainSheet({ rows }: SheetTable, { columns, decimal }: ReadSheet): string {
  const header = columns.map(({ head }) => (head === null ? 'note' : `${head.name} [${head.unit.code}]`));
  const lines = rows.map(({ cells }) =>
    columns.map(({ head }, index) => {
      const cell = cells[index] ?? '';
      return head === null ? noteCell(cell) : numberCell(cell, decimal ?? '.');
    }),
  );
  return [header.map(csvCell), ...lines].map((cells) => `${cells.join(',')}\r\n`).join('');
}

function numberCell(cell: SheetCell, decimal: NonNullable<ReadSheet['decimal']>): string {
  return typeof cell === 'number' ? String(cell) : (plainNumber(cell, decimal) ?? '');
}

/** Between commas a note that is a number could be taken for decimals, so it stands in brackets. */
function noteCell(cell: SheetCell): string {
  const text = oneLine(String(cell)).trim();
  return csvCell(/^\d+(?:\.\d*)?$/.test(text) ? `(${text})` : text);
}
