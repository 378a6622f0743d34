import { isCalendarDate, isoText, sourceDates } from '../engine/date-parts.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'source'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['source'],
  severity: 'error',
  statement: 'The dates of a source exist in the calendar.',
  rationale: 'A thirteenth month usually means that day and month are swapped.',
  source: 'CSL-JSON, date-parts: year, month, day; ISO 8601, Gregorian calendar.',
  example: {
    kind: 'source',
    bad: 'accessed: {date-parts: [[2025, 23, 11]]}',
    good: 'accessed: {date-parts: [[2025, 11, 23]]}',
  },
  *check(profile) {
    for (const { path, parts } of sourceDates(profile)) {
      if (isCalendarDate(parts)) continue;
      yield {
        path,
        part: 'value',
        message: `${isoText(parts)} is not a date of the calendar`,
        found: isoText(parts),
        allowed: 'year, month from 1 to 12, day of that month',
        help: 'Write year, month, day in this order; leave out what is not known.',
      };
    }
  },
};
