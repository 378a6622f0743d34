import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement:
    'Lists, texts and numbers are neither shorter, smaller, longer nor larger than the schema allows.',
  rationale: 'An empty list says nothing, and a text of thousands of letters was pasted by mistake.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'topSpeed: []',
    good: `
topSpeed:
  - {value: 500 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
