import { figuresOutside } from '../../knowledge/figure-outside.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Between width and depth, and between the height and the middle of both. */
const largestRatios = { flat: 6, low: 9, tall: 8 };

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'Width, depth and height of a build envelope are of a similar size.',
  rationale: 'A side that lost or gained a digit looks usual on its own; parts and run-ups are judged by it.',
  source:
    'Common practice, no source: beds are up to twice as wide as deep, tall frames three times as high as wide.',
  formula: `x/${largestRatios.flat} <= y <= ${largestRatios.flat} x; m/${largestRatios.low} <= z <= ${largestRatios.tall} m, m = sqrt(x y); not on a belt`,
  example: alike(
    'machine',
    { bad: '60 mm', good: '460 mm' },
    (width) => `envelope: {x: ${width}, y: 428 mm, z: 442 mm}`,
  ),
  *check(profile) {
    if (profile.data.layout === 'belt') return;
    if (figuresOutside(profile).some(({ path }) => path[0] === 'envelope')) return;
    const { axis, allowed } = comparedSide(profile.data.envelope);
    const side = profile.data.envelope[axis];
    if (side <= 0 || allowed.low <= 0 || (side >= allowed.low && side <= allowed.high)) return;
    yield {
      path: ['envelope', axis],
      part: 'value',
      message: `A side of ${shown(side, 'length')} does not match the others of the build envelope`,
      found: shown(side, 'length'),
      allowed: shownRange(allowed, 'length'),
      help: 'Check the digits against the sheet; if the machine is shaped like that, acknowledge the finding.',
    };
  },
};

/** The side that fits the others least, and what would fit them. */
function comparedSide({ x, y, z }: Machine['envelope']): { axis: 'x' | 'y' | 'z'; allowed: Range } {
  const within = (middle: number, low: number, high = low) => ({ low: middle / low, high: middle * high });
  if (Math.max(x, y) <= largestRatios.flat * Math.min(x, y))
    return { axis: 'z', allowed: within(Math.sqrt(x * y), largestRatios.low, largestRatios.tall) };
  return Math.abs(Math.log(x / z)) > Math.abs(Math.log(y / z))
    ? { axis: 'x', allowed: within(y, largestRatios.flat) }
    : { axis: 'y', allowed: within(x, largestRatios.flat) };
}
