import { type CST, Lexer, Parser } from 'yaml';
import type { Span } from '../finding.ts';
import { linesOf, spanOf } from './yaml-span.ts';

const collections: ReadonlySet<string> = new Set(['block-map', 'block-seq', 'flow-collection']);

/**
 * The tokens of a YAML text, up to where it first nests deeper than so many levels; `tooDeep` is then told the place. The
 * parser of tokens keeps its levels on a list, while the composer of the tree calls itself: it must never see hostile
 * nesting, since a stack that runs out inside of a regular expression ends the whole process. A document's token comes
 * once the whole of it is read, and so never where it is too deep.
 */
export function* shallowTokens(
  text: string,
  deepest: number,
  tooDeep: (place: Span) => void,
): Generator<CST.Token> {
  const parser = new Parser();
  const canBeDeep = deepestPossible(text) > deepest;
  for (const lexeme of new Lexer().lex(text)) {
    const start = parser.offset;
    yield* parser.next(lexeme);
    if (canBeDeep && depthOf(parser) > deepest) {
      tooDeep(spanOf(start, parser.offset, linesOf(text)));
      return;
    }
  }
  yield* parser.end();
}

function depthOf({ stack }: Parser): number {
  let depth = 0;
  for (const { type } of stack) if (collections.has(type)) depth += 1;
  return depth;
}

/** Every level takes a column before its line begins, or a bracket somewhere above: most texts cannot be deep. */
function deepestPossible(text: string): number {
  let columns = 0;
  for (const [before] of text.matchAll(/^[ \t]*(?:[-?:][ \t]+)*/gm))
    columns = Math.max(columns, before.length);
  return 1 + columns + (text.match(/[[{]/g)?.length ?? 0);
}
