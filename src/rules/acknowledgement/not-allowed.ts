import { acknowledgedLimit, acknowledging } from '../engine/examples.ts';
import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'A limit that its own readings or its own interval refute cannot be acknowledged.',
  rationale: 'Tables are made from the limit, and no reason makes a value true that the bench has refuted.',
  source: 'JCGM 101:2008, clause 7: estimate and coverage interval follow from the readings.',
  example: {
    kind: 'filament',
    bad: acknowledging('evidence/unsupported, at: /meltFlow/0'),
    good: acknowledgedLimit,
  },
};
