import { acknowledgedLimit, acknowledging } from '../engine/examples.ts';
import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'A finding is acknowledged for at most twelve months.',
  rationale: 'What was true when somebody looked wears out unseen; once a year somebody has to look again.',
  source: 'Format of the registry: an acknowledgement is for a time, and a year is the longest.',
  example: {
    kind: 'filament',
    bad: acknowledging('evidence/far-below-interval, at: /density, found: 1.27 g/cm3', '2028-01-31'),
    good: acknowledgedLimit,
  },
};
