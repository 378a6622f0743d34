import { alike } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A date exists in the calendar and is written YYYY-MM-DD.',
  rationale: 'The order of day and month differs between countries, and the newest statement counts.',
  source: 'ISO 8601-1:2019, 5.2.2.1: calendar date, extended format.',
  example: alike(
    'filament',
    { bad: '2026-02-30', good: '2026-02-28' },
    (value) => `
density:
  - {value: 1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet, date: '${value}'}`,
  ),
};
