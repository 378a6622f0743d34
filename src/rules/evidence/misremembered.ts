import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A stored result of a trial is what its readings give.',
  rationale:
    'Every run recalculates a few stored results; one that differs was changed, or two computers do not agree.',
  source: 'Format of the registry: the same readings give the same numbers everywhere.',
};
