import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A stored result of a trial or of a check, or a stored profile, is what comes out now.',
  rationale:
    'Every run recalculates a few stored results; one that differs was changed, or two computers do not agree. The fault lies in the folder of stored results and not in a profile, so there is no example; commands that report no findings end with exit status 2 instead.',
  source: 'Format of the registry: the same readings give the same numbers everywhere.',
};
