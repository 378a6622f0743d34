import { acknowledgedLimit, acknowledging } from '../engine/examples.ts';
import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'warning',
  statement: 'An acknowledgement is valid up to and including its date.',
  rationale:
    'A value that was accepted for a time has to be measured again; after that day the finding is back.',
  source: 'Format of the registry: `until` is the last day of an acknowledgement.',
  example: {
    kind: 'filament',
    bad: acknowledging('evidence/far-below-interval, at: /density, found: 1.27 g/cm3', '2026-01-31'),
    good: acknowledgedLimit,
  },
};
