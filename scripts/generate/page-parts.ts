/** A row of a Markdown table. */
export function row(...cells: string[]): string {
  return `| ${cells.join(' | ')} |`;
}

/** A Markdown table of rows that are written already. */
export function table(headings: readonly string[], rows: readonly string[]): string {
  return [row(...headings), row(...headings.map(() => '---')), ...rows].join('\n');
}

/** A value as code in a cell. */
export function code(value: unknown): string {
  return `\`${cell(String(value))}\``;
}

/** A text as it stands in a cell. */
export function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}

/** Paragraphs as a page. */
export function page(parts: readonly string[]): string {
  return `${parts.join('\n\n')}\n`;
}
