import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Every required key is present.',
  rationale: 'Without it the document cannot be used.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'envelope: {x: 236 mm, y: 228 mm}',
    good: 'envelope: {x: 236 mm, y: 228 mm, z: 242 mm}',
  },
};
