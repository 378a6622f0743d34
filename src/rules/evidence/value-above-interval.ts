import { evidenceHits } from '../../evidence/standing.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement: 'A value is not above its interval; a minimum time and a sound level are not below it.',
  rationale:
    'The adopted value may be lower than its interval, on the safe side; above it, nothing supports it.',
  source: 'JCGM 101:2008, clause 7: the coverage interval belongs to the estimate.',
  example: alike(
    'machine',
    { bad: '150 mm/s', good: '120 mm/s' },
    (value) => `
contourSpeed:
  - {value: ${value}, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
  ),
  check: (profile, context) => evidenceHits('evidence/value-above-interval', profile, context),
};
