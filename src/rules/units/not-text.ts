import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A quantity is text, not a list, a mapping, true, false or empty.',
  rationale: 'Leave out what is not known; an empty value would stay in its place for ever.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: {
    kind: 'machine',
    bad: `
topSpeed:
  - {value: [430 mm/s], basis: claimed, source: plumstead-wren-sheet}`,
    good: `
topSpeed:
  - {value: 430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
