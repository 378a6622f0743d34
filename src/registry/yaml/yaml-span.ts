import { LineCounter, type Node } from 'yaml';
import type { Span } from '../finding.ts';

/**
 * Where the lines of a text start. The parser counts lines itself, but misses some inside of text that it cannot
 * make sense of, so the text is asked.
 */
export function linesOf(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  return lines;
}

/** Span of a node of a parsed text, without the space and comments after it. */
export function spanOfNode(node: Node, lines: LineCounter): Span {
  const [start, end] = node.range ?? [0, 0];
  return spanOf(start, end, lines);
}

/** Span between two offsets of a text, in UTF-16 code units from 0. */
export function spanOf(start: number, end: number, lines: LineCounter): Span {
  const from = lines.linePos(start);
  const to = lines.linePos(Math.max(start, end));
  return {
    line: Math.max(1, from.line),
    column: Math.max(1, from.col),
    endLine: Math.max(1, to.line),
    endColumn: Math.max(1, to.col),
  };
}
