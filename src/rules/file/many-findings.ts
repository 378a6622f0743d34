import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A file has no more than 200 findings, as many as anybody can fix in one go.',
  rationale:
    'One mistake repeated in every line hides all others, and a hostile file would fill the screen for hours.',
  source: 'Format of the registry. CWE-400: uncontrolled resource consumption.',
};
