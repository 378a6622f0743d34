import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Accuracy in steps of the display; laser gauges and dial gauges show finer steps than they are good for. */
const usual: Range = { low: 0.5, high: 12 };
const fine = { below: 0.005, high: 20 };

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The accuracy of a gauge is within a few steps of its display.',
  rationale:
    'Both go into the interval of every diameter; a lost digit in one of them makes it too narrow or useless.',
  source:
    'Common practice, no source: calipers and micrometers are good for one to some steps of their display.',
  formula: `${usual.low} d <= accuracy <= ${usual.high} d, d step of the display; up to ${fine.high} d where d < ${fine.below} mm`,
  example: {
    kind: 'trial',
    bad: 'gauge: {resolution: 0.001 mm, accuracy: 0.04 mm}',
    good: 'gauge: {resolution: 0.001 mm, accuracy: 0.004 mm}',
  },
  *check(profile) {
    if (profile.data.gauge === undefined) return;
    const { resolution, accuracy } = profile.data.gauge;
    if (accuracy === undefined || resolution <= 0) return;
    const steps = accuracy / resolution;
    const high = resolution < fine.below ? fine.high : usual.high;
    if (steps >= usual.low && steps <= high) return;
    yield {
      path: ['gauge', 'accuracy'],
      part: 'value',
      message: `The gauge is stated to resolve ${shown(resolution, 'length')} and to be accurate to ${shown(accuracy, 'length')}`,
      found: shown(accuracy, 'length'),
      allowed: shownRange({ low: usual.low * resolution, high: high * resolution }, 'length'),
      help: 'Check both against the certificate or the manual of the gauge.',
    };
  },
};
