import { acknowledgedLimit, acknowledging } from '../engine/examples.ts';
import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement:
    'Refuted limits, missing provenance, dangers to people and whole profiles cannot be acknowledged.',
  rationale:
    'Tables are made from the values, and no reason makes one true that the bench has refuted, or that nobody can trace, or safe that burns or poisons.',
  source:
    'Format of the registry; for limits JCGM 101:2008, clause 7: estimate and coverage interval follow from the readings.',
  example: {
    kind: 'filament',
    bad: acknowledging('evidence/unsupported, at: /meltFlow/0, found: 8 mm3/s'),
    good: acknowledgedLimit,
  },
};
