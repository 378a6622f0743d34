import stringWidth from 'string-width';
import type { Cell, Column, Table } from './document.ts';
import { oneLine } from './one-line.ts';
import { columnWidths } from './text-grid.ts';
import { type TextPrinter, textLine, textLines } from './text-lines.ts';

/** What stands between two columns. */
const gap = '  ';

/** A column that wraps does not get narrower than this, nor than its longest word. */
const narrowest = 12;

/** Cells, each of as many lines as it takes. */
type Row = readonly (readonly string[])[];

/**
 * A table in columns that line up. Where it is too wide, columns that may wrap become narrower, and headings that are
 * wider than their cells are numbered above the table.
 */
export function tableLines(table: Table, printer: TextPrinter): string[] {
  const { headings, legend } = shownHeadings(table, printer);
  const widths = fittingWidths(table, headings, printer);
  const lines = (row: Row) => rowLines(row, table.columns, widths);
  const groups = table.groups.map(({ heading, rows }) => {
    const [first = '', ...others] = headings;
    const head = lines([heading ?? first, ...others].map((text) => [text])).map(printer.styles.strong);
    const cells = rows.map((row) => row.map((cell, index) => cellLines(cell, widths[index] ?? 0, printer)));
    return [...(headings.every((text) => text === '') ? [] : head), ...cells.flatMap(lines)];
  });
  return [...legend, ...groups.flatMap((group, index) => (index === 0 ? group : ['', ...group]))];
}

/** The headings, or numbers for those that alone make the table too wide, with what they stand for. */
function shownHeadings(table: Table, printer: TextPrinter): { headings: string[]; legend: string[] } {
  const headings = table.columns.map(headingText);
  const cells = cellTexts(table, printer);
  const rooms = columnWidths(cells);
  const isWider = headings.map((text, index) => index > 0 && stringWidth(text) > (rooms[index] ?? 0) + 1);
  if (totalWidth(columnWidths([headings, ...cells])) <= printer.width) return { headings, legend: [] };
  const numbered = headings.map((text, index) => (isWider[index] ? String(index) : text));
  if (totalWidth(columnWidths([numbered, ...cells])) > printer.width) return { headings, legend: [] };
  const legend = headings.flatMap((text, index) => (isWider[index] ? [`${index}  ${text}`] : []));
  return { headings: numbered, legend: [...legend, ''] };
}

/** Heading of a column with its unit: `flow [mm³/s]`. */
export function headingText({ heading, unit }: Column): string {
  return oneLine(unit === undefined ? heading : `${heading} [${unit}]`);
}

function cellTexts({ groups }: Table, printer: TextPrinter): string[][] {
  return groups.flatMap(({ heading, rows }) => [
    [heading ?? ''],
    ...rows.map((row) =>
      row.map((cell) => textLine(typeof cell === 'number' ? String(cell) : cell, printer)),
    ),
  ]);
}

function fittingWidths(table: Table, headings: readonly string[], printer: TextPrinter): number[] {
  const widths = columnWidths([headings, ...cellTexts(table, printer)]);
  const least = leastWidths(table, headings, printer);
  for (let excess = totalWidth(widths) - printer.width; excess > 0; excess--) {
    const widest = table.columns.reduce<number | null>((best, { wraps }, index) => {
      const [width = 0, floor = 0] = [widths[index], least[index]];
      if (!wraps || width <= floor) return best;
      return best === null || width > (widths[best] ?? 0) ? index : best;
    }, null);
    if (widest === null) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
}

/** The width of each column that its longest word takes. */
function leastWidths(table: Table, headings: readonly string[], printer: TextPrinter): number[] {
  const words = (cell: Cell) => Math.max(...cellLines(cell, 1, printer).map((line) => stringWidth(line)));
  const cells = table.groups.flatMap(({ rows }) => rows);
  return headings.map((heading, index) =>
    Math.max(narrowest, words(heading), ...cells.map((row) => words(row[index] ?? ''))),
  );
}

function totalWidth(widths: readonly number[]): number {
  return widths.reduce((sum, width) => sum + width, 0) + gap.length * Math.max(0, widths.length - 1);
}

function cellLines(cell: Cell, width: number, printer: TextPrinter): string[] {
  return textLines(typeof cell === 'number' ? String(cell) : cell, { ...printer, width });
}

function rowLines(row: Row, columns: readonly Column[], widths: readonly number[]): string[] {
  const height = Math.max(1, ...row.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    columns
      .map(({ align }, index) => padded(row[index]?.[line] ?? '', widths[index] ?? 0, align))
      .join(gap)
      .trimEnd(),
  );
}

function padded(text: string, width: number, align: Column['align']): string {
  const filler = ' '.repeat(Math.max(0, width - stringWidth(text)));
  return align === 'right' ? filler + text : text + filler;
}
