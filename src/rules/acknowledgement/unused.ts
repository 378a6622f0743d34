import { acknowledgedLimit, acknowledging } from '../engine/examples.ts';
import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'An acknowledgement accepts one existing finding, of the value that it names.',
  rationale:
    'An entry that accepts nothing today may hide a mistake tomorrow, and a value that has changed since was accepted by nobody; the list should only get shorter.',
  source: 'Common practice, no source.',
  example: {
    kind: 'filament',
    bad: acknowledging('evidence/far-below-interval, at: /density, found: 1.27 g/cm3'),
    good: acknowledgedLimit,
  },
};
