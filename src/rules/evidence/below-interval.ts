import { limitsOfProperty } from '../../bench/adopt/adoptable-limits.ts';
import { intervalStatement, propertyOf } from '../../evidence/statement-intervals.ts';
import { statementsOf } from '../../registry/statement.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Another rule finds what is even less. */
const smallestShare = 0.5;

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement:
    'A measured limit lies inside its interval, or says by a reason why it is kept on the safe side of it.',
  rationale:
    "A limit outside of what was measured is somebody's decision, or a wrong digit; nobody can tell which.",
  source: 'JCGM 101:2008, clause 7: the coverage interval belongs to the estimate.',
  example: alike(
    'filament',
    { bad: '\n', good: '\n    reason: Kept lower until the worn nozzle is replaced\n' },
    (reason) => `meltFlow:
  - value: 17 mm3/s
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: 2bf0b98f14c9bbd5${reason}    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002}`,
  ),
  *check(profile) {
    for (const placed of statementsOf(profile)) {
      const stated = intervalStatement(profile, placed);
      if (stated === null || stated.basis !== 'measured' || placed.statement.reason !== undefined) continue;
      const { path, value, interval, dimension } = stated;
      const [limit] = limitsOfProperty(profile.kind, propertyOf(path));
      const isLow =
        limit?.safeSide === 'below' && value < interval.low && value >= smallestShare * interval.low;
      const isHigh = limit?.safeSide === 'above' && value > interval.high;
      if (!isLow && !isHigh) continue;
      yield {
        path: [...path, 'value'],
        part: 'value',
        message: `${shown(value, dimension)} lies ${isLow ? 'below' : 'above'} its interval ${shownRange(interval, dimension)}, and no reason says why`,
        found: shown(value, dimension),
        allowed: `${shownRange(interval, dimension)}, or a reason`,
        help: 'Check the digits; add a `reason` if the limit is kept on the safe side on purpose. A margin for every limit belongs in the policy.',
      };
    }
  },
};
