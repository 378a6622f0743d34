import { alike } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Every key is known to the schema of the kind.',
  rationale: 'A misspelled key would be ignored, and its value would be missing from every table.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: alike(
    'machine',
    { bad: 'heatd: false', good: 'heated: false' },
    (value) => `
chamber:
  enclosed: true
  ${value}
  sensed: true`,
  ),
};
