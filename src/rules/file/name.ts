import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Files and folders have names that can stand on every system.',
  rationale:
    'A file named after a device, or in another encoding than UTF-8, cannot be checked out by a colleague with another system.',
  source:
    'Microsoft, "Naming files, paths, and namespaces" (reserved names; from memory); RFC 3629 for the encoding.',
};
