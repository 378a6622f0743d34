import { methodOf } from '../../bench/methods.ts';
import { weighedMasses } from '../../bench/sheet/trial-observations.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** With fewer readings all last digits can be zeros by chance. */
const fewestReadings = 6;
const roundOff = 1e-6;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'Masses are written to the last digit that the scale shows.',
  rationale: 'A step that is stated ten times too fine makes the interval of the limit narrower than it is.',
  source:
    'JCGM 100:2008 (GUM), F.2.2.1: the step of a display sets what a reading can tell. Six last digits are all 0 by chance once in a million.',
  formula: 'not every m is a multiple of 10 d, d step of the display, m mass',
  example: {
    kind: 'trial',
    bad: 'scale: {resolution: 0.0001 g}',
    good: 'scale: {resolution: 0.001 g}',
  },
  *check(profile) {
    if (profile.data.scale === undefined) return;
    const { resolution } = profile.data.scale;
    const masses = weighedMasses(profile, methodOf(profile.data.method));
    if (resolution <= 0 || masses.length < fewestReadings) return;
    if (!masses.every((mass) => isMultiple(mass, 10 * resolution))) return;
    yield {
      path: ['scale', 'resolution'],
      part: 'value',
      message: `The scale is stated to resolve ${shown(resolution, 'mass')}, but no reading shows a digit finer than ${shown(10 * resolution, 'mass')}`,
      found: shown(resolution, 'mass'),
      allowed: `from ${shown(10 * resolution, 'mass')}`,
      help: 'Check the step of the scale, or write the readings with all digits that it showed.',
    };
  },
};

function isMultiple(value: number, step: number): boolean {
  const steps = value / step;
  return Math.abs(steps - Math.round(steps)) <= roundOff * Math.max(1, steps);
}
