/** A cell of a sheet: text as it was typed, or the number that a workbook holds. */
export type SheetCell = string | number;

/** One row of a sheet, and the line or the row of the workbook that it stands on. */
export interface SheetRow {
  readonly cells: readonly SheetCell[];
  readonly row: number;
}
