/** One row of a sheet as text, and the line it stands on. */
export interface SheetRow {
  readonly cells: readonly string[];
  readonly row: number;
}
