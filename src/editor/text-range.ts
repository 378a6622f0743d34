import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Position, Range } from 'vscode-languageserver-types';
import type { Span } from '../registry/finding.ts';
import type { TextEdit } from '../registry/yaml/text-edit.ts';

/**
 * The range of a span in an open text, as an editor counts: from 0, in UTF-16 code units. An empty span is given one
 * character, and that of a whole file its first line, so that there is something to see.
 */
export function rangeOfSpan(open: TextDocument, span: Span): Range {
  const text = plainText(open);
  const start = offsetAt(text, span.line, span.column);
  const end = offsetAt(text, span.endLine, span.endColumn);
  return end > start ? rangeOf(open, start, end) : rangeOf(open, start, visibleEnd(text, start, span));
}

/** The range between two offsets in the text that the registry reads, which has no byte-order mark. */
export function rangeOf(open: TextDocument, start: number, end: number): Range {
  const shift = byteOrderMark(open);
  return { start: open.positionAt(start + shift), end: open.positionAt(end + shift) };
}

/** An edit of the text that the registry reads, as an editor applies it. */
export function editorEdit(
  open: TextDocument,
  { start, end, text }: TextEdit,
): { readonly range: Range; readonly newText: string } {
  return { range: rangeOf(open, start, end), newText: text };
}

/** Offset of a position in the text that the registry reads. */
export function plainOffset(open: TextDocument, position: Position): number {
  return Math.max(0, open.offsetAt(position) - byteOrderMark(open));
}

/** The text of an open document as the registry reads it. */
export function plainText(open: TextDocument): string {
  return open.getText().replace(/^\uFEFF/, '');
}

function byteOrderMark(open: TextDocument): number {
  return open.getText().startsWith('\uFEFF') ? 1 : 0;
}

/** Offset of a place; findings count lines by line feeds alone, editors by carriage returns too. */
function offsetAt(text: string, line: number, column: number): number {
  let start = 0;
  for (let number = 1; number < line; number++) {
    const end = text.indexOf('\n', start);
    if (end === -1) return text.length;
    start = end + 1;
  }
  return Math.min(start + column - 1, text.length);
}

function visibleEnd(text: string, start: number, { line, column }: Span): number {
  const isWhole = line === 1 && column === 1;
  const end = text.slice(start).search(/[\r\n]|$/);
  return start + (isWhole ? end : Math.min(end, 1));
}
