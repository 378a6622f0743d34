import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A file holds a document.',
  rationale: 'An empty profile is a file that was not saved, or was emptied by mistake.',
  source: 'Format of the registry: one document a file.',
};
