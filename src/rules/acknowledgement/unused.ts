import { acknowledgedLimit, acknowledging } from '../engine/examples.ts';
import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'An acknowledgement accepts an existing finding.',
  rationale:
    'An entry that accepts nothing today may hide a mistake tomorrow; the list should only get shorter.',
  source: 'Common practice, no source.',
  example: {
    kind: 'filament',
    bad: acknowledging('evidence/far-below-interval, at: /density'),
    good: acknowledgedLimit,
  },
};
