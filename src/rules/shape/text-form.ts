import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Ids, versions and other texts with a fixed format have that format.',
  rationale: 'Ids are parts of paths and references, and versions are compared by number.',
  source: 'JSON Schema draft-07, schema/*.schema.json; Semantic Versioning 2.0.0 for versions',
  example: {
    kind: 'machine',
    bad: 'version: "1.0"',
    good: 'version: 1.0.0',
  },
};
