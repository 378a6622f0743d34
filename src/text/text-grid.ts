import { columnsOf } from './columns.ts';

/** A column of a grid of text. */
export interface GridColumn {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

/** Cells padded to the width of their column, so that the columns line up; one text a row, the headings first. */
export function alignedCells(
  columns: readonly GridColumn[],
  rows: readonly (readonly string[])[],
): string[][] {
  const cells = [columns.map(({ heading }) => heading), ...rows];
  const widths = columnWidths(cells);
  const pad = (text: string, index: number) => {
    const filler = ' '.repeat(Math.max(0, (widths[index] ?? 0) - columnsOf(text)));
    return columns[index]?.align === 'right' ? filler + text : text + filler;
  };
  return cells.map((row) => row.map(pad));
}

/** The width of each column: that of its widest cell. */
export function columnWidths(rows: readonly (readonly string[])[]): number[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  return Array.from({ length: columns }, (_, index) =>
    Math.max(...rows.map((row) => columnsOf(row[index] ?? ''))),
  );
}
