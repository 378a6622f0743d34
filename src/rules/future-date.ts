import { shapes } from '../registry/generated/shapes.ts';
import { leavesOf } from '../registry/shape.ts';
import type { DocumentRule } from './rule.ts';

export const futureDate: DocumentRule = {
  judges: 'document',
  code: 'dates/future',
  severity: 'error',
  statement: 'Nothing has been measured, read or noted after today.',
  rationale: 'The newest statement counts; a date with a mistyped year would outrank all that come after it.',
  source: 'ISO 8601 calendar dates compare as text.',
  *check(document, { today }) {
    for (const { path, value } of leavesOf('date', shapes[document.kind], document.written)) {
      if (typeof value !== 'string' || value <= today || path.at(-1) === 'until') continue;
      yield {
        path,
        part: 'value',
        message: `The date ${value} lies in the future`,
        found: value,
        allowed: `up to ${today}`,
        help: 'Correct the date; the year is the usual slip.',
      };
    }
  },
};
