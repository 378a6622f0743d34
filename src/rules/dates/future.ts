import { shapes } from '../../registry/generated/shapes.ts';
import { leavesOf } from '../../registry/shape.ts';
import type { DocumentRule } from '../engine/rule.ts';

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'profile',
  severity: 'error',
  statement: 'No date of a measurement, a visit or a note is in the future.',
  rationale: 'The newest statement counts; one with a mistyped year would outrank all later ones.',
  source: 'ISO 8601 calendar dates compare as text.',
  example: {
    kind: 'filament',
    bad: `density:
  - {value: 1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet, date: '2062-03-12'}`,
    good: `density:
  - {value: 1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet, date: '2026-03-12'}`,
  },
  *check(document, { today }) {
    for (const { path, value } of leavesOf('date', shapes[document.kind], document.written)) {
      if (!isDay(value) || value <= today || path.at(-1) === 'until') continue;
      yield {
        path,
        part: 'value',
        message: `The date ${value} is in the future`,
        found: value,
        allowed: `up to ${today}`,
        help: 'Correct the date; usually the year is mistyped.',
      };
    }
  },
};

/** Other texts are the concern of the schema. */
function isDay(value: unknown): value is string {
  return typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value);
}
