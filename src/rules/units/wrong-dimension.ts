import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A unit fits the quantity that the key stands for.',
  rationale: 'A flow in place of a speed is a value in the wrong line.',
  source: 'The Unified Code for Units of Measure (UCUM), case-sensitive codes',
  example: stating('machine', 'topSpeed', { bad: '430 mm3/s', good: '430 mm/s' }),
};
