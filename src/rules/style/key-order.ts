import { reorderKeys } from '../../registry/fix/fix-key-order.ts';
import { quote } from '../../text/quote.ts';
import type { DocumentRule } from '../engine/rule.ts';

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'profile',
  severity: 'note',
  statement: 'The keys of a profile are in the order of its schema.',
  rationale: 'In the same order, two profiles can be compared side by side, and diffs stay small.',
  source: 'Format of the registry: schema/*.schema.json list the keys in their order.',
  example: {
    kind: 'machine',
    bad: 'maker: Plumstead\nname: Wren',
    good: 'name: Wren\nmaker: Plumstead',
  },
  *check({ kind, source, yaml }) {
    const reordering = reorderKeys(source.text, yaml, kind);
    if (reordering === null) return;
    const { key, after } = reordering;
    yield {
      path: [key],
      part: 'key',
      message: `"${quote(key)}" stands below "${quote(after)}", but above it in the schema`,
      found: quote(key),
      allowed: `above "${quote(after)}"`,
      help: 'Move the key with its value, or run `meltbounds check --fix`.',
    };
  },
};
