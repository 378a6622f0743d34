import type { ProfileRule } from './rule.ts';
import { intervalStatements } from './statement-intervals.ts';
import { shown, shownRange } from './wording.ts';

export const valueAboveInterval: ProfileRule = {
  judges: 'profile',
  code: 'evidence/value-above-interval',
  severity: 'error',
  statement: 'A value is not above the interval that it is stated with.',
  rationale:
    'The adopted value may be lower than its interval, on the safe side; above it, nothing supports it.',
  source: 'JCGM 101:2008, clause 7: the coverage interval belongs to the estimate.',
  example: {
    kind: 'machine',
    bad: `
contourSpeed:
  - {value: 150 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
    good: `
contourSpeed:
  - {value: 120 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
  },
  *check(profile, { registry }) {
    for (const { path, value, interval, dimension, basis, evidence } of intervalStatements(profile)) {
      // Where the readings are there, the rule on support says it better.
      const recomputed =
        path.includes('meltFlow') && basis === 'measured' && registry.trial.has(evidence ?? '');
      if (recomputed || value <= interval.high) continue;
      yield {
        path: [...path, 'value'],
        part: 'value',
        message: `${shown(value, dimension)} lies above its interval ${shownRange(interval, dimension)}`,
        found: shown(value, dimension),
        allowed: `up to ${shown(interval.high, dimension)}`,
        help: 'Adopt a value within the interval or below; check the digits of both.',
      };
    }
  },
};
