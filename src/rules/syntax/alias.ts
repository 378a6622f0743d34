import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Values are written out; aliases are not used.',
  rationale: 'Profiles are reviewed line by line; an alias changes in a line that nobody looks at.',
  source: 'YAML 1.2.2 (yaml.org/spec/1.2.2), the part of it that the registry reads',
  example: {
    kind: 'machine',
    bad: `
name: &name Wren
maker: *name`,
    good: `
name: Wren
maker: Wren`,
  },
};
