import { printable } from './printable.ts';
import { alignedCells, type GridColumn } from './text-grid.ts';

/** A space without width: code hosts then see no name, no number of an issue and no address of mail. */
const noWidth = '&#8203;';

/** What Markdown would read; `&` only where it begins a character, and `_` only at the end of a word, do anything. */
const markUp = /[\\`*[\]<>|#~]|&(?=#?\w+;)|(?<![A-Za-z0-9])_|_(?![A-Za-z0-9])/g;

/**
 * Text in which Markdown, HTML and a code host see nothing but text: no mark-up, no link, no mention of a person or an
 * issue. What cannot be seen, such as a change of direction, is written out.
 */
export function escapeMarkdown(text: string): string {
  return printable(text)
    .replace(markUp, (character) => `\\${character}`)
    .replace(/@|#(?=\d)/g, (character) => character + noWidth)
    .replaceAll('://', '&#58;//')
    .replace(/\b(www)\./gi, '$1&#46;');
}

/** A table of cells that are Markdown already, and that also lines up as plain text. */
export function alignedTable(columns: readonly GridColumn[], rows: readonly (readonly string[])[]): string {
  const [head = [], ...body] = alignedCells(columns, rows);
  const rule = columns.map(({ align }, index) => ruleOf(align, head[index]?.length ?? 0));
  return tableLines([head, rule, ...body]);
}

/** A table of cells that are Markdown already, in as few characters as it takes. */
export function compactTable(columns: readonly GridColumn[], rows: readonly (readonly string[])[]): string {
  const head = columns.map(({ heading }) => heading);
  return tableLines([head, columns.map(({ align }) => ruleOf(align, 0)), ...rows]);
}

function ruleOf(align: GridColumn['align'], width: number): string {
  const dashes = '-'.repeat(Math.max(3, width) - (align === 'right' ? 1 : 0));
  return align === 'right' ? `${dashes}:` : dashes;
}

function tableLines(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `| ${row.join(' | ')} |`).join('\n');
}
