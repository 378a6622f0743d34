import { acknowledgedLimit, acknowledging } from '../engine/examples.ts';
import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'An acknowledgement names an existing rule.',
  rationale: 'A misspelled code accepts nothing, although it looks as if it did.',
  source: 'Format of the registry: codes of rules never change their meaning.',
  example: {
    kind: 'filament',
    bad: acknowledging('evidence/far-bellow, at: /density, found: 1.27 g/cm3'),
    good: acknowledgedLimit,
  },
};
