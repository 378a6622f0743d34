import { highestStated, stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { assuming } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'error',
  statement: 'The contour speed of a machine is at most its top speed.',
  rationale: 'A contour is a path like any other and cannot be faster than the machine.',
  source: 'Definition of the top speed.',
  example: assuming('machine', 'contourSpeed', { bad: '600 mm/s', good: '200 mm/s' }),
  *check(profile) {
    const top = highestStated(profile.data.topSpeed);
    if (top === null) return;
    for (const { path, value } of stated(profile.data.contourSpeed, ['contourSpeed'])) {
      if (value <= top) continue;
      yield {
        path,
        part: 'value',
        message: `A contour speed of ${shown(value, 'speed')} is above the top speed of the machine, ${shown(top, 'speed')}`,
        found: shown(value, 'speed'),
        allowed: `up to ${shown(top, 'speed')}`,
        help: 'Check the digits and units of both.',
      };
    }
  },
};
