import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Every value has the type that the schema asks for: text, number, list or mapping.',
  rationale: 'The statements about a quantity are a list, because several sources may state it.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'topSpeed: {value: 430 mm/s, basis: claimed, source: plumstead-wren-sheet}',
    good: `
topSpeed:
  - {value: 430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
