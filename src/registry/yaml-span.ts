import type { LineCounter, Node } from 'yaml';
import type { Span } from './finding.ts';

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
