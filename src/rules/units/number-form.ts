import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A number is written with a decimal point, without grouping, sign of plus or leading zeros.',
  rationale: 'The comma of 1,240 groups thousands in one country and starts decimals in another.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: {
    kind: 'machine',
    bad: `
topSpeed:
  - {value: "1,240 mm/s", basis: claimed, source: plumstead-wren-sheet}`,
    good: `
topSpeed:
  - {value: 1240 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
