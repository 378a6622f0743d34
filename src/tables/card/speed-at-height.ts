import { beadArea } from '../../physics/bead.ts';
import type { Millimetres, MillimetresPerSecond } from '../../units/canonical.ts';
import type { SpeedRow } from '../derive/speed-table.ts';

/**
 * The speed that the bounds of a feature allow at a layer height between those of its rows, in mm/s, not rounded; the
 * rows are those of one feature and line width. Melt follows the cross-section of the bead (v = Q/A, continuity); what
 * does not depend on the layer is as in the rows. A contour speed that was found at single layer heights counts with
 * its lowest, as it does in tables of an untested height.
 */
export function speedAtHeight(rows: readonly SpeedRow[], layerHeight: Millimetres): MillimetresPerSecond {
  return Math.min(...rows.map((row) => allowedBy(row, layerHeight)));
}

function allowedBy({ bounds, ...row }: SpeedRow, layerHeight: Millimetres): MillimetresPerSecond {
  const thinner = beadArea(row.layerHeight, row.lineWidth) / beadArea(layerHeight, row.lineWidth);
  return Math.min(...bounds.map(({ name, allowed }) => (name === 'melt' ? allowed * thinner : allowed)));
}
