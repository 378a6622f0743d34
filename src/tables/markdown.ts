import { alignedCells, type GridColumn } from './text-grid.ts';

/** Text in which Markdown and HTML see nothing but text. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_[\]<>|#~&]/g, (character) => `\\${character}`);
}

/** One bullet an item; whatever the items say is shown as text. */
export function markdownList(items: readonly string[]): string {
  return items.map((item) => `- ${escapeMarkdown(item)}`).join('\n');
}

/**
 * A table that also lines up as plain text. Whatever its cells say is shown as text; headings are taken as they are.
 */
export function markdownTable(columns: readonly GridColumn[], rows: readonly (readonly string[])[]): string {
  const [head = [], ...body] = alignedCells(
    columns,
    rows.map((row) => row.map(escapeMarkdown)),
  );
  const rule = head.map((text, index) => {
    const isRight = columns[index]?.align === 'right';
    const dashes = '-'.repeat(Math.max(3, text.length) - (isRight ? 1 : 0));
    return isRight ? `${dashes}:` : dashes;
  });
  return [head, rule, ...body].map((row) => `| ${row.join(' | ')} |`).join('\n');
}
