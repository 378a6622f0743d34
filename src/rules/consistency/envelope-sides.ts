import { figuresOutside } from '../../knowledge/figure-outside.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Between width and depth, and between the height and the middle of both; gantries wider than `wide`, in mm, are flatter. */
const largestRatios = { flat: 3.2, low: 6, wideAndLow: 9, tall: 8 };
const wide = 1000;
/** Height over width of usual parallel arms: tells which of two unlike sides is the odd one. */
const usualTallness = 2;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement:
    'Width, depth and height of a build envelope are of a similar size, suit the layout, and are those that the sheet states.',
  rationale: 'A side that lost or gained a digit looks usual on its own; parts and run-ups are judged by it.',
  source:
    'Common practice, no source: beds are up to twice as wide as deep, tall frames three times as high as wide.',
  formula: `x/${largestRatios.flat} <= y <= ${largestRatios.flat} x; m/${largestRatios.low} <= z <= ${largestRatios.tall} m, m = sqrt(x y), from m/${largestRatios.wideAndLow} where m > ${wide} mm; not on a belt`,
  example: alike(
    'machine',
    { bad: '60 mm', good: '460 mm' },
    (width) => `envelope: {x: ${width}, y: 428 mm, z: 442 mm}`,
  ),
  *check(profile) {
    if (profile.data.layout === 'belt') return;
    if (figuresOutside(profile).some(({ path }) => path[0] === 'envelope')) return;
    const found = [...unlikeStated(profile.data), ...unlikeLayout(profile.data)];
    yield* found;
    if (found.length > 0) return;
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

type Axis = 'x' | 'y' | 'z';

/** Rounding to whole millimetres or tenths of an inch. */
const rounding = 0.01;

function* unlikeStated({ envelope }: Machine): Generator<Hit> {
  const sides = envelope.asStated === undefined ? null : sidesIn(envelope.asStated);
  if (sides === null) return;
  const off = (['x', 'y', 'z'] as const).filter((axis) => !isNear(envelope[axis], sides[axis]));
  const [axis] = off;
  if (axis === undefined) return;
  const isSwapped =
    off.length > 1 && off.every((one) => off.some((other) => isNear(envelope[one], sides[other])));
  const named = off.map((each) => `${each} ${shown(envelope[each], 'length')}`).join(', ');
  yield {
    path: ['envelope', axis],
    part: 'value',
    message: `${isSwapped ? 'Sides of the build envelope are swapped' : 'The build envelope is not what the sheet states'}: ${named}, but it is stated as ${envelope.asStated}`,
    found: shown(envelope[axis], 'length'),
    allowed: shown(sides[axis], 'length'),
    help: 'Compare both with the sheet: x is the width, y the depth, z the height.',
  };
}

/** Millimetres in the units of sheets. */
const factors: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4 };

/** The sides, in mm, of `290 x 310 x 345 mm`, or of the diameter and the height of `245 x 615 mm`. */
function sidesIn(text: string): Readonly<Record<Axis, number>> | null {
  const factor = factors[/[a-z]+$/.exec(text)?.[0] ?? ''];
  const numbers = text.match(/[\d.]+/g)?.map(Number) ?? [];
  const [x, second, third] = numbers.map((number) => number * (factor ?? Number.NaN));
  if (factor === undefined || x === undefined || second === undefined) return null;
  return third === undefined ? { x, y: x, z: second } : { x, y: second, z: third };
}

function isNear(one: number, other: number): boolean {
  return Math.abs(one - other) <= rounding * other;
}

function* unlikeLayout({ layout, envelope: { x, y, z } }: Machine): Generator<Hit> {
  if (layout !== 'parallelArm' || isNear(x, y)) return;
  const oddness = (side: number) => Math.abs(Math.log(z / side / usualTallness));
  const axis = oddness(x) > oddness(y) ? 'x' : 'y';
  const other = axis === 'x' ? y : x;
  yield {
    path: ['envelope', axis],
    part: 'value',
    message: `Parallel arms reach as far in width as in depth, but the build envelope is ${shown(x, 'length')} wide and ${shown(y, 'length')} deep`,
    found: shown(axis === 'x' ? x : y, 'length'),
    allowed: shown(other, 'length'),
    help: 'Compare the three sides with the sheet: x is the width, y the depth, z the height; two of them may be swapped.',
  };
}

/** The side that fits the others least, and what would fit them. */
function comparedSide({ x, y, z }: Machine['envelope']): { axis: Axis; allowed: Range } {
  const within = (middle: number, low: number, high = low) => ({ low: middle / low, high: middle * high });
  if (Math.max(x, y) <= largestRatios.flat * Math.min(x, y)) {
    const middle = Math.sqrt(x * y);
    const low = middle > wide ? largestRatios.wideAndLow : largestRatios.low;
    return { axis: 'z', allowed: within(middle, low, largestRatios.tall) };
  }
  return Math.abs(Math.log(x / z)) > Math.abs(Math.log(y / z))
    ? { axis: 'x', allowed: within(y, largestRatios.flat) }
    : { axis: 'y', allowed: within(x, largestRatios.flat) };
}
