import { Lexer, Parser } from 'yaml';
import type { Span } from '../finding.ts';
import { linesOf, spanOf } from './yaml-span.ts';

const collections: readonly string[] = ['block-map', 'block-seq', 'flow-collection'];

/**
 * Where a YAML text first nests deeper than so many levels, or null. The parser of tokens keeps its levels on a
 * list, while the composer of the tree calls itself: it must never see hostile nesting, since a stack that runs
 * out inside of a regular expression ends the whole process.
 */
export function tooDeepAt(text: string, deepest: number): Span | null {
  if (deepestPossible(text) <= deepest) return null;
  const parser = new Parser();
  for (const lexeme of new Lexer().lex(text)) {
    const start = parser.offset;
    for (const _ of parser.next(lexeme));
    const depth = parser.stack.filter(({ type }) => collections.includes(type)).length;
    if (depth > deepest) return spanOf(start, parser.offset, linesOf(text));
  }
  return null;
}

/** Every level takes a column before its line begins, or a bracket somewhere above: most texts cannot be deep. */
function deepestPossible(text: string): number {
  let columns = 0;
  for (const [before] of text.matchAll(/^[ \t]*(?:[-?:][ \t]+)*/gm))
    columns = Math.max(columns, before.length);
  return 1 + columns + (text.match(/[[{]/g)?.length ?? 0);
}
