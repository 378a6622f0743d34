import { lengthToTouchSpeed } from '../../physics/motion.ts';
import { highestStated, stated } from '../../registry/stated.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In s. */
const usual: Range = { low: 0.01, high: 0.29 };
/** Slow machines take longer than that, on a run-up of a few centimetres or of a part of their bed (mm; common practice, no source). */
const shortRunUp = { length: 50, partOfDiagonal: 1 / 12 };

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'A machine reaches its top speed within some tenths of a second, or on a short run-up.',
  rationale:
    'Top speed and acceleration of a machine go together; if not, one of them lost or gained a digit.',
  source:
    'OpenStax, University Physics vol. 1, section 3.4: t = v/a; the ends are common practice, no source.',
  formula: `${usual.low} s <= v/a; v/a <= ${usual.high} s or v^2/2a <= max(${shortRunUp.length} mm, d/${1 / shortRunUp.partOfDiagonal}), v top speed, a acceleration, d diagonal of the bed`,
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
      const runUp = lengthToTouchSpeed(speed, value) / 2;
      const longest = Math.max(shortRunUp.length, shortRunUp.partOfDiagonal * diagonal);
      if (time >= usual.low && (time <= usual.high || runUp <= longest)) continue;
      // A speed that the bed is too short for is the finding of another rule.
      if (2 * runUp > diagonal) continue;
      const least = Math.min(speed / usual.high, (speed * speed) / (2 * longest));
      const allowed = { low: least, high: speed / usual.low };
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
