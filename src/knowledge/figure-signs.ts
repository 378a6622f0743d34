import { factAt } from '../registry/facts-of-key.ts';
import { ratioBases } from '../registry/generated/key-facts.ts';
import type { Kind } from '../registry/kind.ts';
import type { Path } from '../registry/shape.ts';
import type { Dimension } from '../units/dimension.ts';

/** What may be zero or negative: scales with a zero of their own, and differences. */
export const dimensionsWithSign: readonly Dimension[] = [
  'temperature',
  'temperatureDifference',
  'soundLevel',
  'angle',
];

/** Whether a quantity is a share of a whole, from 0 % to 100 %, and no ratio to something else. */
export function isShare(dimension: Dimension, kind: Kind, path: Path): boolean {
  return dimension === 'ratio' && factAt<string>(ratioBases, kind, path) === undefined;
}
