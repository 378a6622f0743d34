import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A file is UTF-8 text.',
  rationale: 'In another encoding characters such as ° and µ turn into others.',
  source: 'YAML 1.2.2, section 5.2; RFC 3629.',
};
