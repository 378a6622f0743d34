import { stating } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'A quantity has a unit.',
  rationale: 'Nobody can tell whether 430 was meant in mm/s or mm/min, and the machine runs either.',
  source:
    'The Unified Code for Units of Measure (UCUM), case-sensitive codes; BIPM, The International System of Units, 9th edition, 2.1: value = number times unit',
  example: stating('machine', 'topSpeed', { bad: '430', good: '430 mm/s' }),
};
