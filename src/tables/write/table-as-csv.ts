import { formatCsv } from '../../text/csv.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { inputText } from '../derive/table-inputs.ts';
import { cellOf, headingOf, tableColumns } from './columns.ts';

export const inputsHeading = 'inputs';

/**
 * The table as CSV (RFC 4180: CRLF, quotes doubled). Text that a spreadsheet would run as a formula is defused.
 * The last column names the documents that the rows were derived from.
 */
export function formatTableAsCsv(table: SpeedTable): string {
  return formatCsv([csvHeader, ...csvRows(table)]);
}

/** Headings of the columns, as bench sheets write them. */
export const csvHeader: readonly string[] = [...tableColumns.map(headingOf), inputsHeading];

/** A line of cells for each row of a table. */
export function csvRows(table: SpeedTable): (string | number)[][] {
  const inputs = table.inputs.map(inputText).join('; ');
  return table.rows.map((row) => [...tableColumns.map((column) => cellOf(row, column)), inputs]);
}
