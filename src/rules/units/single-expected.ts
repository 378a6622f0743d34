import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A single value is written where no range is expected.',
  rationale: 'A calculation cannot tell which end of a range was meant.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: {
    kind: 'machine',
    bad: `
topSpeed:
  - {value: 400..430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
    good: `
topSpeed:
  - {value: 430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
