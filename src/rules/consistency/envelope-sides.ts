import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Between one side of a build envelope and the middle one of the three. */
const largestRatio = 6;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'The sides of a build envelope are within a factor of six of the middle one.',
  rationale: 'A side that lost or gained a digit looks usual on its own; parts and run-ups are judged by it.',
  source:
    'Common practice, no source: tall frames are about three times as high as wide, belt machines longer.',
  formula: `m/${largestRatio} <= s <= ${largestRatio} m, s side, m the middle one of the three`,
  example: alike(
    'machine',
    { bad: '60 mm', good: '460 mm' },
    (width) => `envelope: {x: ${width}, y: 428 mm, z: 442 mm}`,
  ),
  *check(profile) {
    const sides = Object.entries(profile.data.envelope);
    const middle = sides.map(([, side]) => side).sort((a, b) => a - b)[1] ?? 0;
    if (middle <= 0) return;
    const allowed = { low: middle / largestRatio, high: middle * largestRatio };
    for (const [axis, side] of sides) {
      if (side <= 0 || (side >= allowed.low && side <= allowed.high)) continue;
      yield {
        path: ['envelope', axis],
        part: 'value',
        message: `A side of ${shown(side, 'length')} does not match the others of the build envelope (middle one: ${shown(middle, 'length')})`,
        found: shown(side, 'length'),
        allowed: shownRange(allowed, 'length'),
        help: 'Check the digits against the sheet; if the machine is shaped like that, acknowledge the finding.',
      };
    }
  },
};
