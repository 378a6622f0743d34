import { lengthToTouchSpeed, peakSpeedOfMove } from '../../physics/motion.ts';
import { highestStated, stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'A machine can reach its top speed within its build envelope.',
  rationale: 'A speed that needs a longer way than the machine has cannot have been measured on it.',
  source: 'OpenStax, University Physics vol. 1, section 3.4: motion with constant acceleration.',
  formula:
    'L = v^2/a, v top speed, a acceleration, L way to reach it and stop again; L <= diagonal of the bed',
  example: stating('machine', 'acceleration', { bad: '500 mm/s2', good: '5000 mm/s2' }),
  *check(profile) {
    const acceleration = highestStated(profile.data.acceleration);
    if (acceleration === null || acceleration <= 0) return;
    const diagonal = Math.hypot(profile.data.envelope.x, profile.data.envelope.y);
    for (const { path, value } of stated(profile.data.topSpeed, ['topSpeed'])) {
      const needed = lengthToTouchSpeed(value, acceleration);
      if (needed <= diagonal) continue;
      yield {
        path,
        part: 'value',
        blames: [{ path: ['acceleration'] }, { path: ['envelope'] }],
        message: `${shown(value, 'speed')} cannot be reached: at ${shown(acceleration, 'acceleration')} it needs ${shown(needed, 'length')} to reach it and stop, but the diagonal of the bed is ${shown(diagonal, 'length')}`,
        found: shown(value, 'speed'),
        allowed: `up to ${shown(peakSpeedOfMove(diagonal, acceleration), 'speed')}`,
        help: 'Check speed, acceleration and envelope; one of them has a wrong digit or unit.',
      };
    }
  },
};
