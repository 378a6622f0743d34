import { smallestBead } from '../../knowledge/smallest-bead.ts';
import { flowAtSpeed } from '../../physics/bead.ts';
import { lengthToTouchSpeed } from '../../physics/motion.ts';
import { highestStated, stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Top speeds are claimed for travel too: twice what can be printed is no contradiction yet (common practice, no source). */
const travelFactor = 2;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'note',
  statement:
    'The claimed flow is enough for at least half of the claimed top speed with the smallest usual bead.',
  rationale:
    'Otherwise no printed path comes anywhere near the top speed; often one of the two has a wrong digit.',
  source: 'Continuity; the smallest bead is common practice, no source.',
  formula:
    '2 Q >= v [h(w - h) + pi h^2/4] with h = 0.25 d and w = 1.1 d, d smallest nozzle, v top speed, Q claimed flow',
  example: stating('machine', 'topSpeed', { bad: '1600 mm/s', good: '900 mm/s' }),
  *check(profile) {
    const claims = profile.data.hotEnds.flatMap(({ meltFlow }) => meltFlow ?? []);
    const flow = highestStated(claims.filter(({ basis }) => basis === 'claimed'));
    const area = smallestBead(profile.data);
    const acceleration = highestStated(profile.data.acceleration);
    if (flow === null || area === null || acceleration === null) return;
    const { x, y } = profile.data.envelope;
    for (const { path, value, statement } of stated(profile.data.topSpeed, ['topSpeed'])) {
      const needed = flowAtSpeed(value, area);
      if (statement.basis !== 'claimed' || needed <= travelFactor * flow) continue;
      // A speed that the axes cannot reach is found as such.
      if (lengthToTouchSpeed(value, acceleration) > Math.hypot(x, y)) continue;
      yield {
        path,
        part: 'value',
        message: `${shown(value, 'speed')} can only be reached in travel moves: the smallest usual bead would need ${shown(needed, 'volumeFlow')} at this speed, but ${shown(flow, 'volumeFlow')} is claimed`,
        found: shown(value, 'speed'),
        allowed: `up to ${shown(flow / area, 'speed')} while printing`,
        help: 'Check the digits of both; if the sheet says so, acknowledge it.',
      };
    }
  },
};
