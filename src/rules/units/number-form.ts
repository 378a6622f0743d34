import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A number has a decimal point and no thousands separators, plus sign or leading zeros.',
  rationale: 'The comma in 1,240 separates thousands in one country and decimals in another.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: stating('machine', 'topSpeed', { bad: '"1,240 mm/s"', good: '1240 mm/s' }),
};
