import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'No profile is a symbolic link.',
  rationale: 'A link may lead out of the registry, to a file that nobody has reviewed.',
  source: 'Format of the registry: one document a file. CWE-59: improper link resolution before file access.',
};
