import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A word that is one of a list is spelled as in the list.',
  rationale: 'Calculations depend on these words: a moving bed is not accelerated like a gantry.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'layout: gantri',
    good: 'layout: gantry',
  },
};
