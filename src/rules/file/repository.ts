import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'No folder of a registry has the insides of a git repository.',
  rationale:
    'A git that stands in such a folder takes it for a repository and obeys its settings, which may name programs to run.',
  source: 'git-config(1), safe.bareRepository. CWE-829: inclusion of functionality from an untrusted sphere.',
};
