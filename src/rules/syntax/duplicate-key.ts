import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A key occurs only once in its mapping.',
  rationale: 'If a key occurs twice, programs keep the first or the last value without saying so.',
  source: 'YAML 1.2.2, section 3.2.1.3: keys of a mapping are unique.',
  example: {
    kind: 'machine',
    bad: `
name: Wren
name: Wren 2`,
    good: 'name: Wren',
  },
};
