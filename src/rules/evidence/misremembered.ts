import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A remembered reduction of a trial is what its readings give.',
  rationale:
    'Every run computes a few remembered results again; one that differs has been changed, or two machines do not agree.',
  source: 'Format of the registry: the same readings give the same numbers everywhere.',
};
