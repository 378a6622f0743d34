import { endsOf } from '../../knowledge/figure-outside.ts';
import { dimensionsWithSign } from '../../knowledge/figure-signs.ts';
import { bandAt } from '../../registry/facts-of-key.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Kind } from '../../registry/kind.ts';
import { isObject, type Leaf, leavesOf, type Shape } from '../../registry/shape.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'error',
  statement:
    'Lengths, masses, times, speeds, flows and powers are above zero; shares and prices are not negative.',
  rationale: 'In many data sheets zero means "unknown"; here unknown values are left out.',
  source: 'Definition of the quantities: only temperatures, differences, levels and angles have a sign.',
  example: {
    kind: 'filament',
    bad: 'diameterTolerance: 0 mm',
    good: 'diameterTolerance: 0.03 mm',
  },
  *check(profile) {
    for (const leaf of leavesOf('quantity', shapes[profile.kind], profile.data)) {
      if (isAboveZero(leaf) || mayBeZero(leaf, profile.kind)) continue;
      yield {
        path: leaf.path,
        part: 'value',
        ...wordsFor(leaf),
        help: 'Write the value; leave the line out if it is not known.',
      };
    }
  },
};

function wordsFor({ shape: { dimension }, value }: QuantityLeaf): Pick<Hit, 'message' | 'found' | 'allowed'> {
  if (dimension === 'money') return { message: 'A price cannot be below zero', allowed: '0 and more' };
  const found = shown(endsOf(value)[0] ?? 0, dimension);
  return {
    message: `${found} is not above zero, as every ${dimensionInfo[dimension].description} must be`,
    found,
    allowed: dimension === 'ratio' ? '0 % and more' : 'above 0',
  };
}

/** Whether zero is a value and no stand-in for an unknown one: nothing is drawn back, a move takes no pause. */
function mayBeZero({ path, value }: QuantityLeaf, kind: Kind): boolean {
  return value === 0 && bandAt(kind, path)?.possible.low === 0;
}

type QuantityLeaf = Leaf<Extract<Shape, { type: 'quantity' }>>;

function isAboveZero({ shape: { dimension }, value }: QuantityLeaf): boolean {
  if (dimensionsWithSign.includes(dimension)) return true;
  // A gift costs nothing; whether a price was meant is asked by a rule of its own.
  if (isObject(value) && typeof value.amount === 'number') return value.amount >= 0;
  const ends = endsOf(value);
  const [first = 1, last = first] = ends;
  // A range may begin at zero: a filament that need not be dried at all.
  return dimension === 'ratio' || ends.length > 1
    ? first >= 0 && (last > 0 || dimension === 'ratio')
    : first > 0;
}
