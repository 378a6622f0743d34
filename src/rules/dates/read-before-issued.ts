import { statementsOf } from '../../registry/statement.ts';
import { isoText, sourceDates } from '../engine/date-parts.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement: 'No value was read before its source was issued.',
  rationale: 'The value comes from an earlier edition, or one of the two dates has a mistyped year.',
  source: 'ISO 8601: dates of the same precision compare as text.',
  example: alike(
    'filament',
    { bad: '2001-02-12', good: '2026-02-12' },
    (date) => `
density:
  - {value: 1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet, date: '${date}'}`,
  ),
  *check(profile, { registry }) {
    for (const { path, statement } of statementsOf(profile)) {
      const { source: id = '', date, basis } = statement;
      const source = registry.source.get(id);
      // What was measured carries the day of the bench.
      if (source === undefined || date === undefined || basis === 'measured') continue;
      const [first] = sourceDates(source);
      const known = first === undefined ? '' : isoText(first.parts);
      if (first === undefined || date.slice(0, known.length) >= known) continue;
      yield {
        path: [...path, 'date'],
        part: 'value',
        message: `The value was read on ${date}, but "${id}" was ${first.name} on ${known}`,
        found: date,
        allowed: `from ${known}`,
        help: 'Correct the date, or name the edition that the value was read from.',
      };
    }
  },
};
