import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A range is written with both of its ends, joined by two dots.',
  rationale: 'A hyphen could be a minus sign, and a single value is not a range.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: stating('filament', 'nozzleTemperature', { bad: '230-255 Cel', good: '230..255 Cel' }),
};
