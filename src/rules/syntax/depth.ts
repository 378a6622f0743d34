import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A document is nested no deeper than 24 levels.',
  rationale: 'No kind needs more than 7; deeper nesting can crash programs that read it.',
  source: 'CWE-674: uncontrolled recursion.',
};
