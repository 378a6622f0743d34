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

/** Ratios to the diameter of a nozzle, which are no shares of a whole. */
const ratiosToNozzle: readonly (string | number | undefined)[] = ['layerHeights', 'lineWidths'];

/** Whether a quantity is a share of a whole, from 0 % to 100 %. */
export function isShare(dimension: Dimension, kind: Kind, path: Path): boolean {
  return dimension === 'ratio' && !(kind === 'policy' && ratiosToNozzle.includes(path[0]));
}
