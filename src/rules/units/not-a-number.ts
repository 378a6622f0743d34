import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A quantity begins with a number.',
  rationale: 'Words such as "fast" or "n/a" are not values; leave out what is not known.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: {
    kind: 'machine',
    bad: `
topSpeed:
  - {value: about 430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
    good: `
topSpeed:
  - {value: 430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
