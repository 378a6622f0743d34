import { lengthToTouchSpeed } from '../../physics/motion.ts';
import { highestStated, stated } from '../../registry/stated.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In s. */
const usual: Range = { low: 0.012, high: 0.29 };

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'A machine reaches its top speed within some hundredths of a second.',
  rationale:
    'Top speed and acceleration of a machine go together; if not, one of them lost or gained a digit.',
  source:
    'OpenStax, University Physics vol. 1, section 3.4: t = v/a; the ends are common practice, no source.',
  formula: `${usual.low} s <= v/a <= ${usual.high} s, v top speed, a acceleration`,
  example: alike(
    'machine',
    { bad: '1000 mm/s2', good: '8200 mm/s2' },
    (value) => `
topSpeed:
  - {value: 400 mm/s, basis: claimed, source: plumstead-wren-sheet}
acceleration:
  - {value: ${value}, basis: claimed, source: plumstead-wren-sheet}`,
  ),
  *check(profile) {
    const speed = highestStated(profile.data.topSpeed);
    const best = highestStated(profile.data.acceleration);
    if (speed === null || speed <= 0) return;
    const diagonal = Math.hypot(profile.data.envelope.x, profile.data.envelope.y);
    for (const { path, value } of stated(profile.data.acceleration, ['acceleration'])) {
      if (value !== best || value <= 0) continue;
      const time = speed / value;
      if (time >= usual.low && time <= usual.high) continue;
      // A speed that the bed is too short for is the finding of another rule.
      if (lengthToTouchSpeed(speed, value) > diagonal) continue;
      const allowed = { low: speed / usual.high, high: speed / usual.low };
      yield {
        path,
        part: 'value',
        message: `At ${shown(value, 'acceleration')} it takes ${shown(time, 'time')} to reach the top speed of ${shown(speed, 'speed')}`,
        found: shown(value, 'acceleration'),
        allowed: shownRange(allowed, 'acceleration'),
        help: 'Check the digits and units of acceleration and top speed.',
      };
    }
  },
};
