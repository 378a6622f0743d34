import type { ReadDocument } from '../../registry/profile.ts';
import { brokenKey, oncePerRegistry } from '../../registry/registry.ts';
import { quote } from '../../text/quote.ts';
import { allFlows, ladder } from '../engine/examples.ts';
import type { DocumentRule } from '../engine/rule.ts';

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'registry',
  severity: 'error',
  statement: 'An id stands for one document of its kind.',
  rationale: 'If two documents share an id, a reference may mean either, and a table may use the wrong one.',
  source: 'Format of the registry: the id names the document.',
  example: {
    kind: 'trial',
    copied: true,
    bad: "date: '2025-02-12'",
    good: `id: wren-clover-petg-245-first
date: '2025-02-12'${ladder(allFlows, { apart: 0.002 })}`,
  },
  *check(document, { registry }) {
    const first = firstOfEach(registry).get(brokenKey(document.kind, document.id));
    if (first === undefined || first.source === document.source) return;
    yield {
      path: ['id'],
      part: 'value',
      message: `The ${document.kind} "${quote(document.id)}" is already described in ${first.source.path}`,
      found: quote(document.id),
      allowed: `an id that no other ${document.kind} has`,
      help: 'Merge the two, or give this one its own id.',
    };
  },
};

const firstOfEach = oncePerRegistry(({ documents }) => {
  const first = new Map<string, ReadDocument>();
  for (const document of documents) {
    const key = brokenKey(document.kind, document.id);
    if (!first.has(key)) first.set(key, document);
  }
  return first;
});
