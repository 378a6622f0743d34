import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'The lower end of a range comes first.',
  rationale: 'Swapped ends are a mistake, and one of them may have a wrong digit as well.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  formula: 'low ≤ high',
  example: stating('filament', 'nozzleTemperature', { bad: '255..230 Cel', good: '230..255 Cel' }),
};
