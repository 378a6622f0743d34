import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A value from a fixed list is spelled as in the list.',
  rationale: 'Calculations depend on these words: a moving bed accelerates differently from a gantry.',
  source: 'JSON Schema draft-07, schema/*.schema.json',
  example: {
    kind: 'machine',
    bad: 'layout: gantri',
    good: 'layout: gantry',
  },
};
