import stringWidth from 'string-width';

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
  const widths = columns.map(({ heading }, index) =>
    Math.max(stringWidth(heading), ...rows.map((row) => stringWidth(row[index] ?? ''))),
  );
  const pad = (text: string, index: number) => {
    const filler = ' '.repeat(Math.max(0, (widths[index] ?? 0) - stringWidth(text)));
    return columns[index]?.align === 'right' ? filler + text : text + filler;
  };
  return [columns.map(({ heading }) => heading), ...rows].map((row) => row.map(pad));
}
