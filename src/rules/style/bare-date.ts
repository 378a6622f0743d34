import { bareDates } from '../../registry/fix/quote-dates.ts';
import { quote } from '../../text/quote.ts';
import type { DocumentRule } from '../engine/rule.ts';

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'profile',
  severity: 'note',
  statement: 'A date stands in quotation marks.',
  rationale: 'Readers of YAML 1.1 turn a bare date into a point in time, which no schema takes for text.',
  source: 'YAML 1.2.2, which has no type for dates; YAML 1.1, type library, timestamp.',
  example: {
    kind: 'machine',
    bad: 'fieldNotes: [{date: 2026-04-02, what: The fan rattles., effect: None.}]',
    good: "fieldNotes: [{date: '2026-04-02', what: The fan rattles., effect: None.}]",
  },
  *check({ kind, source, yaml }) {
    for (const { path, written } of bareDates(kind, source.text, yaml)) {
      yield {
        path,
        part: 'value',
        message: `The date ${quote(written)} has no quotation marks, so that some readers do not take it for text`,
        found: quote(written),
        allowed: `'${quote(written)}'`,
        help: `Write \`'${quote(written)}'\`, or run \`meltbounds check --fix\`.`,
      };
    }
  },
};
