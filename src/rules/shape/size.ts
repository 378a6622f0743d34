import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Lists, texts and numbers are within the sizes that the schema allows.',
  rationale: 'An empty list says nothing, and a text of thousands of characters was pasted by mistake.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'topSpeed: []',
    good: `
topSpeed:
  - {value: 430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
