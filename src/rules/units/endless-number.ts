import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A number has no more than 15 significant digits.',
  rationale: 'More digits than any instrument shows come from a pasted calculation.',
  source: 'IEEE 754-2019: 15 decimal digits survive the way into binary64 and back. JCGM 100:2008, 7.2.6.',
  example: stating('machine', 'topSpeed', { bad: '333.3333333333333333 mm/s', good: '333 mm/s' }),
};
