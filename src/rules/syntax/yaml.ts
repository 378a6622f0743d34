import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A profile is one well-formed YAML document without tags.',
  rationale: 'A text that cannot be read in one clear way cannot be checked any further.',
  source: 'YAML 1.2.2 (yaml.org/spec/1.2.2), the part of it that the registry reads',
  example: {
    kind: 'machine',
    bad: 'name: "Wren',
    good: 'name: "Wren"',
  },
};
