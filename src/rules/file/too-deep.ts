import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Folders are nested no deeper than a kind of profile needs.',
  rationale: 'A file that lies deeper belongs to no kind, and was probably moved by mistake.',
  source: 'Format of the registry: KIND/MAKER/NAME.yaml, trials/YEAR/ID.yaml.',
};
