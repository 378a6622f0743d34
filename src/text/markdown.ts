import { printable } from './printable.ts';
import { alignedCells, type GridColumn } from './text-grid.ts';

/** A space without width: code hosts then see no name, no number of an issue and no address of mail. */
const noWidth = '&#8203;';

/**
 * Text in which Markdown, HTML and a code host see nothing but text: no mark-up, no link, no mention of a person or an
 * issue. What cannot be seen, such as a change of direction, is written out.
 */
export function escapeMarkdown(text: string): string {
  return printable(text)
    .replace(/[\\`*_[\]<>|#~&]/g, (character) => `\\${character}`)
    .replace(/@|#(?=\d)/g, (character) => character + noWidth)
    .replaceAll('://', '&#58;//')
    .replace(/\b(www)\./gi, '$1&#46;');
}

/** One bullet an item; whatever the items say is shown as text. */
export function markdownList(items: readonly string[]): string {
  return items.map((item) => `- ${escapeMarkdown(item)}`).join('\n');
}

/**
 * A table that also lines up as plain text. Whatever its cells say is shown as text; headings are taken as they are.
 */
export function markdownTable(columns: readonly GridColumn[], rows: readonly (readonly string[])[]): string {
  return alignedTable(
    columns,
    rows.map((row) => row.map(escapeMarkdown)),
  );
}

/** A table of cells that are Markdown already, and that also lines up as plain text. */
export function alignedTable(columns: readonly GridColumn[], rows: readonly (readonly string[])[]): string {
  const [head = [], ...body] = alignedCells(columns, rows);
  const rule = head.map((text, index) => {
    const isRight = columns[index]?.align === 'right';
    const dashes = '-'.repeat(Math.max(3, text.length) - (isRight ? 1 : 0));
    return isRight ? `${dashes}:` : dashes;
  });
  return [head, rule, ...body].map((row) => `| ${row.join(' | ')} |`).join('\n');
}
