import { columnsOf } from './columns.ts';
import { type Cell, type Column, type Table, wholeHeading } from './document.ts';
import { columnWidths } from './text-grid.ts';
import { type TextPrinter, textLine, textLines } from './text-lines.ts';

/** What stands between two columns. */
const gap = '  ';

/** A column that wraps does not get narrower than this, nor than its longest word. */
const narrowest = 12;

/** Cells, each of as many lines as it takes. */
type Row = readonly (readonly string[])[];

/**
 * A table in columns that line up. Where it is too wide, headings and the columns that may wrap take more lines, and
 * headings that are still wider than their cells are numbered above the table. What is still too wide is stacked: further
 * columns stand below, behind the first column once more.
 */
export function tableLines(table: Table, printer: TextPrinter): string[] {
  return partsThatFit(table, printer).flatMap((part, index) => [
    ...(index === 0 ? [] : ['']),
    ...partLines(part, printer),
  ]);
}

/** The columns of a table in as many tables as it takes for each to fit, each with the first column before its own. */
function partsThatFit(table: Table, printer: TextPrinter): Table[] {
  const parts: number[][] = [];
  for (const index of table.columns.keys()) {
    if (index === 0) continue;
    const last = parts.at(-1);
    if (last === undefined || !fits(columnsIn(table, [0, ...last, index]), printer)) parts.push([index]);
    else last.push(index);
  }
  return parts.length < 2 ? [table] : parts.map((part) => columnsIn(table, [0, ...part]));
}

function fits(table: Table, printer: TextPrinter): boolean {
  const { headings } = shownHeadings(table, printer);
  return totalWidth(leastWidths(table, headings, printer)) <= printer.width;
}

function columnsIn(table: Table, indices: readonly number[]): Table {
  return {
    ...table,
    columns: indices.flatMap((index) => table.columns[index] ?? []),
    groups: table.groups.map(({ heading, rows }) => ({
      heading,
      rows: rows.map((row) => indices.map((index) => row[index] ?? '')),
    })),
  };
}

function partLines(table: Table, printer: TextPrinter): string[] {
  const { headings, legend } = shownHeadings(table, printer);
  const widths = fittingWidths(table, headings, printer);
  const lines = (row: Row) => rowLines(row, table.columns, widths);
  const cells = (row: readonly Cell[]) =>
    row.map((cell, index) => cellLines(cell, widths[index] ?? 0, printer));
  const groups = table.groups.map(({ heading, rows }) => {
    const [first = '', ...others] = headings;
    const head = lines(cells([heading ?? first, ...others])).map(printer.styles.strong);
    return [...(headings.every((text) => text === '') ? [] : head), ...rows.map(cells).flatMap(lines)];
  });
  return [...legend, ...groups.flatMap((group, index) => (index === 0 ? group : ['', ...group]))];
}

/** The headings, or numbers for those that alone make the table too wide, with what they stand for. */
function shownHeadings(table: Table, printer: TextPrinter): { headings: string[]; legend: string[] } {
  const headings = table.columns.map(headingText);
  if (totalWidth(leastWidths(table, headings, printer)) <= printer.width) return { headings, legend: [] };
  const rooms = columnWidths(cellTexts(table, printer));
  const isWider = headings.map((text, index) => index > 0 && columnsOf(text) > (rooms[index] ?? 0) + 1);
  const numbered = headings.map((text, index) => (isWider[index] ? String(index) : text));
  if (totalWidth(leastWidths(table, numbered, printer)) > printer.width) return { headings, legend: [] };
  const legend = headings.flatMap((text, index) => (isWider[index] ? [`${index}  ${text}`] : []));
  return { headings: numbered, legend: [...legend, ''] };
}

/** Heading of a column with its unit: `flow [mm³/s]`. */
function headingText(column: Column): string {
  const heading = wholeHeading(column);
  return column.unit === undefined ? heading : `${heading} [${column.unit}]`;
}

function cellTexts({ groups }: Table, printer: TextPrinter): string[][] {
  return groups.flatMap(({ heading, rows }) => [
    [heading ?? ''],
    ...rows.map((row) => row.map((cell) => textLine(textOf(cell), printer))),
  ]);
}

/** The width of each column: what its cells take, or less where the table would be too wide. */
function fittingWidths(table: Table, headings: readonly string[], printer: TextPrinter): number[] {
  const widths = columnWidths([headings, ...cellTexts(table, printer)]);
  const least = leastWidths(table, headings, printer);
  for (let excess = totalWidth(widths) - printer.width; excess > 0; excess--) {
    const widest = widths.reduce<number | null>((best, width, index) => {
      if (width <= (least[index] ?? 0)) return best;
      return best === null || width > (widths[best] ?? 0) ? index : best;
    }, null);
    if (widest === null) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
}

/** The width that each column needs at least: its cells, or their longest word where they may wrap, and that of its heading. */
function leastWidths(
  { columns, groups }: Table,
  headings: readonly string[],
  printer: TextPrinter,
): number[] {
  const longestWord = (cell: Cell) => widestOf(cellLines(cell, 1, printer));
  const whole = (cell: Cell) => columnsOf(textLine(textOf(cell), printer));
  return columns.map(({ wraps }, index) => {
    const cells = groups.flatMap(({ rows }) => rows.map((row) => row[index] ?? ''));
    const titles = index === 0 ? groups.flatMap(({ heading }) => heading ?? []) : [];
    const least = cells.map(wraps ? longestWord : whole);
    return Math.max(
      wraps ? narrowest : 0,
      longestWord(headings[index] ?? ''),
      ...titles.map(whole),
      ...least,
    );
  });
}

function widestOf(lines: readonly string[]): number {
  return Math.max(0, ...lines.map(columnsOf));
}

function totalWidth(widths: readonly number[]): number {
  return widths.reduce((sum, width) => sum + width, 0) + gap.length * Math.max(0, widths.length - 1);
}

function textOf(cell: Cell): Exclude<Cell, number> {
  return typeof cell === 'number' ? String(cell) : cell;
}

function cellLines(cell: Cell, width: number, printer: TextPrinter): string[] {
  return textLines(textOf(cell), { ...printer, width });
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
  const filler = ' '.repeat(Math.max(0, width - columnsOf(text)));
  return align === 'right' ? filler + text : text + filler;
}
