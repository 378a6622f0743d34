import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Every profile is a plain file that can be read.',
  rationale: 'A file that is silently skipped would look like one without problems.',
  source: 'Format of the registry: one document a file.',
};
