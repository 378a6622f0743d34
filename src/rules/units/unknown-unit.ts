import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A unit is known to the registry.',
  rationale: 'A unit that cannot be converted cannot be compared with any limit.',
  source: 'The Unified Code for Units of Measure (UCUM), case-sensitive codes',
  example: stating('machine', 'topSpeed', { bad: '430 mms', good: '430 mm/s' }),
};
