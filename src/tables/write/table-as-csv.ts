import { formatQuirk } from '../../knowledge/quirk-words.ts';
import type { Quirk } from '../../knowledge/quirks.ts';
import { formatCsv } from '../../text/csv.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { inputText } from '../derive/table-inputs.ts';
import { cellOf, headingOf, tableColumns } from './columns.ts';

export const inputsHeading = 'inputs';
export const quirksHeading = 'quirks';

/**
 * The table as CSV (RFC 4180: CRLF, quotes doubled). Text that a spreadsheet would run as a formula is defused.
 * The last columns hold the quirks and the documents that the rows were derived from.
 */
export function formatTableAsCsv(table: SpeedTable): string {
  return formatCsv([csvHeader, ...csvRows(table)]);
}

/** Headings of the columns, as bench sheets write them. */
export const csvHeader: readonly string[] = [...tableColumns.map(headingOf), quirksHeading, inputsHeading];

/** A line of cells for each row of a table. */
export function csvRows(table: SpeedTable): (string | number)[][] {
  const inputs = table.inputs.map(inputText).join('; ');
  return table.rows.map((row) => [
    ...tableColumns.map((column) => cellOf(row, column)),
    quirksOfRow(table, row),
    inputs,
  ]);
}

/** The quirks of the pairing as a whole, and those that show at the flow and temperature of a row. */
function quirksOfRow({ quirks }: SpeedTable, row: SpeedRow): string {
  return quirks
    .filter((quirk, index) => concernsWholePairing(quirk) || row.quirks.includes(index))
    .map(formatQuirk)
    .join('; ');
}

function concernsWholePairing({ concerns }: Quirk): boolean {
  return concerns === null || (concerns.aboveFlow === null && concerns.nozzleTemperature === null);
}
