import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Every profile is a plain file that can be read.',
  rationale: 'A file that is passed over in silence would look like one that is sound.',
  source: 'Format of the registry: one document a file.',
};
