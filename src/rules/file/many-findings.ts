import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A file has no more findings than anybody can fix in one go, 200.',
  rationale:
    'One slip repeated in every line drowns all others, and a hostile file would fill the screen for hours.',
  source: 'Format of the registry. CWE-400: uncontrolled resource consumption.',
};
