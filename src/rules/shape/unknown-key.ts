import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Every key is one that the schema of the kind knows.',
  rationale: 'A misspelled key would be passed over, and its value be missing in every table.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: `
chamber:
  enclosed: true
  heatd: false
  sensed: true`,
    good: `
chamber:
  enclosed: true
  heated: false
  sensed: true`,
  },
};
