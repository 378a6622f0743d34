import { intervalStatements } from '../../evidence/statement-intervals.ts';
import { shownRange } from '../../units/wording.ts';
import { assuming } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

const widestFactor = 2;

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement: 'The ends of an interval differ by less than a factor of two.',
  rationale: 'A limit that may be twice as high was not really found; often one end is mistyped.',
  source: 'Common practice, no source.',
  example: assuming('machine', 'contourSpeed', {
    bad: '120 mm/s, interval: 11..130 mm/s',
    good: '120 mm/s, interval: 110..130 mm/s',
  }),
  *check(profile) {
    for (const { path, interval, dimension } of intervalStatements(profile)) {
      if (interval.low <= 0 || interval.high <= widestFactor * interval.low) continue;
      yield {
        path: [...path, 'interval'],
        part: 'value',
        message: `The interval ${shownRange(interval, dimension)} spans more than a factor of ${widestFactor}`,
        found: shownRange(interval, dimension),
        allowed: `ends within a factor of ${widestFactor} of each other`,
        help: 'Check the digits of both ends; if they are right, add steps near the limit and reduce again.',
      };
    }
  },
};
