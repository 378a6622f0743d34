import stringWidth from 'string-width';
import type { Span } from '../registry/finding.ts';
import { printable } from '../units/printable.ts';

const widest = 100;

/** The line of a text that a span points at, and a second one that marks the place; null when there is no such line. */
export function sourceFrame(
  text: string,
  span: Span,
): { readonly line: string; readonly marker: string } | null {
  const line = text.split('\n')[span.line - 1]?.replace(/\r$/, '');
  if (line === undefined || line.trim() === '') return null;
  const from = Math.min(span.column - 1, line.length);
  const to =
    span.endLine === span.line ? Math.min(Math.max(span.endColumn - 1, from + 1), line.length) : line.length;
  const start = windowStart(line, from);
  const before = `${start > 0 ? '…' : ''}${printable(line.slice(start, from))}`;
  const marked = printable(line.slice(from, to));
  const shown = trimmed(`${before}${marked}${printable(line.slice(to))}`);
  const indent = stringWidth(before);
  const length = Math.max(1, Math.min(stringWidth(marked), widest - indent));
  return { line: shown, marker: `${' '.repeat(indent)}${'~'.repeat(length)}` };
}

/** A long line is cut so that the marked place stays in sight, with some of what stands before it. */
function windowStart(line: string, from: number): number {
  return line.length <= widest ? 0 : Math.max(0, from - widest / 2);
}

function trimmed(text: string): string {
  return text.length <= widest ? text : `${text.slice(0, widest - 1)}…`;
}
