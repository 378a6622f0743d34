import type { ProfileRule } from './rule.ts';
import { intervalStatements } from './statement-intervals.ts';
import { shown, shownRange } from './wording.ts';

/** Caution takes off some per cent; half is no caution any more (common practice, no source). */
const smallestShare = 0.5;

export const farBelowInterval: ProfileRule = {
  judges: 'profile',
  code: 'evidence/far-below',
  severity: 'warning',
  statement: 'A value is not below half of the lower end of its interval.',
  rationale: 'A limit far below what its readings support is a slip of a digit, and makes every table slow.',
  source: 'Common practice, no source.',
  example: {
    kind: 'machine',
    bad: `
contourSpeed:
  - {value: 50 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
    good: `
contourSpeed:
  - {value: 100 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
  },
  *check(profile) {
    for (const { path, value, interval, dimension } of intervalStatements(profile)) {
      if (value >= smallestShare * interval.low) continue;
      yield {
        path: [...path, 'value'],
        part: 'value',
        message: `${shown(value, dimension)} is less than half of what its interval ${shownRange(interval, dimension)} supports`,
        found: shown(value, dimension),
        allowed: `from ${shown(smallestShare * interval.low, dimension)}`,
        help: 'Check the digits; a margin belongs into the policy, not into the limit.',
      };
    }
  },
};
