import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A key stands once in its mapping.',
  rationale: 'Of two values under one key programs keep either the first or the last, and say nothing.',
  source: 'YAML 1.2.2, section 3.2.1.3: keys of a mapping are unique.',
  example: {
    kind: 'machine',
    bad: `
name: Wren
name: Wren 2`,
    good: 'name: Wren',
  },
};
