import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A quantity begins with a number.',
  rationale: 'Words such as "fast" or "n/a" are not values; leave out what is not known.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: stating('machine', 'topSpeed', { bad: 'about 430 mm/s', good: '430 mm/s' }),
};
