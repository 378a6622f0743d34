import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Every key that the schema of the kind requires is there.',
  rationale: 'Without it the document cannot be used for what it is for.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'envelope: {x: 220 mm, y: 220 mm}',
    good: 'envelope: {x: 220 mm, y: 220 mm, z: 250 mm}',
  },
};
