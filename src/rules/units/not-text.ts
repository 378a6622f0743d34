import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A quantity is text, not a list, a mapping, true, false or empty.',
  rationale: 'Leave out what is not known; an empty value would stay in its place for ever.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: stating('machine', 'topSpeed', { bad: '[430 mm/s]', good: '430 mm/s' }),
};
