import { highestStated, stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { assuming } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

const leastShare = 0.05;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'The contour speed of a machine is at least a twentieth of its top speed.',
  rationale:
    'A contour speed in mm/min, or without its last digit, makes every table slow and just looks cautious.',
  source: `Common practice, no source: contours run at a tenth to three quarters of the top speed; ${leastShare * 100} % with some room.`,
  formula: `v_contour >= ${leastShare} v_top`,
  example: assuming('machine', 'contourSpeed', { bad: '15 mm/s', good: '150 mm/s' }),
  *check(profile) {
    const top = highestStated(profile.data.topSpeed);
    if (top === null) return;
    for (const { path, value } of stated(profile.data.contourSpeed, ['contourSpeed'])) {
      if (value <= 0 || value >= leastShare * top) continue;
      yield {
        path,
        part: 'value',
        message: `A contour speed of ${shown(value, 'speed')} is less than a twentieth of the top speed, ${shown(top, 'speed')}`,
        found: shown(value, 'speed'),
        allowed: `from ${shown(leastShare * top, 'speed')}`,
        help: 'Check the digits and units of both.',
      };
    }
  },
};
