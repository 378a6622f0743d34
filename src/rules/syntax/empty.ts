import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A file contains a document.',
  rationale: 'An empty file was not saved, or was emptied by mistake.',
  source: 'Format of the registry: one document a file.',
};
