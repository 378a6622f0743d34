import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A file is not larger than 1 MiB.',
  rationale: 'The largest real profile has a tenth of that; more is the wrong file or an attack.',
  source: 'Format of the registry. CWE-400: uncontrolled resource consumption.',
};
