import { respellings } from '../../registry/fix/fix-spelling.ts';
import { quote } from '../../text/quote.ts';
import type { DocumentRule } from '../engine/rule.ts';

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'profile',
  severity: 'note',
  statement: 'A quantity is written as a number, one space and a UCUM code.',
  rationale: 'One spelling per unit makes profiles easy to search and to compare.',
  source: 'The Unified Code for Units of Measure (UCUM), case-sensitive codes.',
  example: {
    kind: 'machine',
    bad: 'envelope: {x: 236mm, y: 228 mm, z: 242 mm}',
    good: 'envelope: {x: 236 mm, y: 228 mm, z: 242 mm}',
  },
  *check(document) {
    for (const { path, written, canonical, isReadable } of respellings(document)) {
      // What is not read is an error of form already.
      if (!isReadable) continue;
      yield {
        path,
        part: 'value',
        message: `"${quote(written)}" is understood, but profiles spell it differently`,
        found: quote(written),
        allowed: canonical,
        help: `Write \`${canonical}\`, or run \`meltbounds check --fix\`.`,
      };
    }
  },
};
