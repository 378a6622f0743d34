import type { Span } from '../../registry/finding.ts';
import { columnsOf } from '../../text/columns.ts';
import { printable } from '../../text/printable.ts';

/** Widest line that is shown, in columns of a terminal. */
const widest = 100;

/** The line of a text that a span points at, and a second one that marks the place; null when there is no such line. */
export function sourceFrame(
  text: string,
  span: Span,
): { readonly line: string; readonly marker: string } | null {
  const whole = lineAt(text, span.line);
  if (whole === null || whole.trim() === '') return null;
  // What lies further away than two widths is not shown; a hostile line can be a megabyte long.
  const cut = Math.max(0, span.column - 1 - 2 * widest);
  const line = whole.slice(cut, span.column + 4 * widest);
  const from = Math.min(span.column - 1 - cut, line.length);
  const to =
    span.endLine === span.line
      ? Math.min(Math.max(span.endColumn - 1 - cut, from + 1), line.length)
      : line.length;
  const before = visible(line.slice(0, from));
  const marked = visible(line.slice(from, to));
  const after = visible(line.slice(to));
  const all = [...before, ...marked, ...after];
  // A long line is cut so that the marked place stays in sight, with some of what stands before it.
  const head = width(all) <= widest ? before.join('') : cutBefore(before, widest / 2);
  const room = widest - columnsOf(head);
  const length = Math.max(1, Math.min(width(marked), room));
  return {
    line: head + cutAfter([...marked, ...after], room),
    marker: `${' '.repeat(columnsOf(head))}${'~'.repeat(length)}`,
  };
}

/** Findings come file by file, and a hostile one has hundreds of thousands of lines. */
let recent: { readonly text: string; readonly starts: readonly number[] } = { text: '', starts: [0] };

/** Where the lines of a text begin. */
function startsOf(text: string): readonly number[] {
  if (recent.text === text) return recent.starts;
  const starts = [0];
  for (let end = text.indexOf('\n'); end !== -1; end = text.indexOf('\n', end + 1)) starts.push(end + 1);
  recent = { text, starts };
  return starts;
}

/** A line of a text, counted from 1, without its end; null where the text has no such line. */
function lineAt(text: string, number: number): string | null {
  const starts = startsOf(text);
  const start = starts[number - 1];
  if (start === undefined) return null;
  return text.slice(start, (starts[number] ?? text.length + 1) - 1).replace(/\r$/, '');
}

/** The characters of a text as a terminal may show them. */
function visible(text: string): string[] {
  return [...text].map(printable);
}

function width(characters: readonly string[]): number {
  return characters.reduce((sum, character) => sum + columnsOf(character), 0);
}

function cutBefore(characters: readonly string[], room: number): string {
  let start = characters.length;
  for (let left = room - 1; start > 0; start--) {
    left -= columnsOf(characters[start - 1] ?? '');
    if (left < 0) break;
  }
  return `${start > 0 ? '…' : ''}${characters.slice(start).join('')}`;
}

function cutAfter(characters: readonly string[], room: number): string {
  if (width(characters) <= room) return characters.join('');
  let end = 0;
  for (let left = room - 1; end < characters.length; end++) {
    left -= columnsOf(characters[end] ?? '');
    if (left < 0) break;
  }
  return `${characters.slice(0, end).join('')}…`;
}

/** Longest part of a text that is quoted as a whole, in UTF-16 code units. */
const longestQuote = 1000;

/** What a span holds, of one or several lines; null where it holds nothing, or too much to be quoted. */
export function spanText(text: string, { line, column, endLine, endColumn }: Span): string | null {
  const lines = text.split('\n', endLine).slice(line - 1);
  const last = lines.length - 1;
  const part = lines.map((each, index) =>
    each.replace(/\r$/, '').slice(index === 0 ? column - 1 : 0, index === last ? endColumn - 1 : undefined),
  );
  const quoted = part.join('\n');
  return quoted === '' || quoted.length > longestQuote ? null : quoted;
}
