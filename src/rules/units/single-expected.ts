import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A single value is written where no range is expected.',
  rationale: 'A calculation cannot tell which end of a range was meant.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: stating('machine', 'topSpeed', { bad: '400..430 mm/s', good: '430 mm/s' }),
};
