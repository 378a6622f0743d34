import type { Pairing } from '../../knowledge/pairing.ts';
import { isBeadFeasible } from '../../physics/bead.ts';
import type { Fraction, Millimetres } from '../../units/canonical.ts';
import { clean } from '../../units/round-to-step.ts';
import { type Calculation, sourcedTerm } from './calculation.ts';
import { sourcedQuantity } from './sourced-value.ts';

/** A layer height and line width, each with the share of the nozzle diameter that it comes from. */
export interface Bead {
  readonly layerHeight: Millimetres;
  readonly lineWidth: Millimetres;
  readonly heightFrom: Calculation;
  readonly widthFrom: Calculation;
}

/** The beads of a policy with the nozzle of a pairing, and a sentence for each that cannot be laid. */
export function beadsOf(pairing: Pairing): { readonly feasible: Bead[]; readonly warnings: string[] } {
  const { layerHeights, lineWidths } = pairing.policy.data;
  const heights = layerHeights.map((share, index) => sizeOf(pairing, 'layerHeights', index, share));
  const widths = lineWidths.map((share, index) => sizeOf(pairing, 'lineWidths', index, share));
  const beads = heights.flatMap((heightFrom) =>
    widths.map((widthFrom) => ({
      layerHeight: heightFrom.exact,
      lineWidth: widthFrom.exact,
      heightFrom,
      widthFrom,
    })),
  );
  const feasible = beads.filter((bead) => isBeadFeasible(bead.layerHeight, bead.lineWidth));
  const warnings = beads
    .filter((bead) => !feasible.includes(bead))
    .map((bead) => `A line ${bead.lineWidth} mm wide cannot be ${bead.layerHeight} mm high; it is left out.`);
  return { feasible, warnings };
}

function sizeOf(
  { policy, machine, hotEnd, nozzle }: Pairing,
  list: 'layerHeights' | 'lineWidths',
  index: number,
  share: Fraction,
): Calculation {
  const [symbol, what] = list === 'layerHeights' ? ['h', 'layer height'] : ['w', 'line width'];
  const ofNozzle = sourcedQuantity(policy, [list, index], share);
  const place = [
    'hotEnds',
    machine.data.hotEnds.indexOf(hotEnd),
    'nozzles',
    hotEnd.nozzles.indexOf(nozzle),
    'diameter',
  ];
  const diameter = sourcedQuantity(machine, place, nozzle.diameter, `diameter of nozzle ${nozzle.id}`);
  return {
    symbol,
    what,
    formula: 'k * d',
    terms: [sourcedTerm('k', ofNozzle, share), sourcedTerm('d', diameter, nozzle.diameter)],
    exact: clean(share * nozzle.diameter),
    dimension: 'length',
    rounded: null,
  };
}
