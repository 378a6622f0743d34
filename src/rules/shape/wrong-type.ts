import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Text, numbers, lists and mappings stand where the schema wants them.',
  rationale: 'Statements of one quantity form a list, since several sources may state it.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'topSpeed: {value: 500 mm/s, basis: claimed, source: plumstead-wren-sheet}',
    good: `
topSpeed:
  - {value: 500 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
  },
};
