import { limitsOfProperty } from '../../bench/adopt/adoptable-limits.ts';
import { intervalStatements, propertyOf } from '../../evidence/statement-intervals.ts';
import { shown, shownRange } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  severity: 'error',
  statement:
    'A value is not above the interval that it is stated with; a time that must pass and a sound level are not below it.',
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
      const property = propertyOf(path);
      const [limit] = limitsOfProperty(profile.kind, property);
      const recomputed = limit !== undefined && basis === 'measured' && registry.trial.has(evidence ?? '');
      const safeAbove = limit?.safeSide === 'above';
      if (recomputed || (safeAbove ? value >= interval.low : value <= interval.high)) continue;
      yield {
        path: [...path, 'value'],
        part: 'value',
        message: `${shown(value, dimension)} lies ${safeAbove ? 'below' : 'above'} its interval ${shownRange(interval, dimension)}`,
        found: shown(value, dimension),
        allowed: safeAbove
          ? `from ${shown(interval.low, dimension)}`
          : `up to ${shown(interval.high, dimension)}`,
        help: `Adopt a value within the interval or ${safeAbove ? 'above' : 'below'}; check the digits of both.`,
      };
    }
  },
};
