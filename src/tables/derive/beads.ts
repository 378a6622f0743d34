import type { Pairing } from '../../knowledge/pairing.ts';
import { isBeadFeasible } from '../../physics/bead.ts';
import type { Fraction, Millimetres } from '../../units/canonical.ts';
import { clean } from '../../units/round-to-step.ts';
import { type Calculation, sourcedTerm, type Term } from './calculation.ts';
import { type SourcedValue, sourcedQuantity } from './sourced-value.ts';

/** A layer height and line width, each with where it comes from. */
export interface Bead {
  readonly layerHeight: Millimetres;
  readonly lineWidth: Millimetres;
  readonly heightFrom: Calculation;
  readonly widthFrom: Calculation;
}

/** A layer height or line width of one's own: in mm, or as a share of the nozzle diameter. */
export type AskedSize = { readonly millimetres: Millimetres } | { readonly ofNozzle: Fraction };

/** Layer heights and line widths in place of those of the policy; a list that is left out is the policy's. */
export interface AskedBeads {
  readonly layerHeights?: readonly AskedSize[];
  readonly lineWidths?: readonly AskedSize[];
}

/** The beads of a table with the nozzle of a pairing, and a sentence for each that cannot be laid. */
export function beadsOf(
  pairing: Pairing,
  asked: AskedBeads = {},
): { readonly feasible: Bead[]; readonly warnings: string[] } {
  const beads = sizesOf(pairing, 'layerHeights', asked.layerHeights).flatMap((heightFrom) =>
    sizesOf(pairing, 'lineWidths', asked.lineWidths).map((widthFrom) => ({
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

type SizeList = 'layerHeights' | 'lineWidths';

/** Sizes of a list, the smallest first, each once. */
function sizesOf(pairing: Pairing, list: SizeList, asked: readonly AskedSize[] | undefined): Calculation[] {
  const sizes =
    asked === undefined
      ? pairing.policy.data[list].map((share, index) => policySize(pairing, list, index, share))
      : asked.map((size) => askedSize(pairing, list, size)).sort((a, b) => a.exact - b.exact);
  return sizes.filter(({ exact }, index) => sizes.findIndex((other) => other.exact === exact) === index);
}

function policySize(pairing: Pairing, list: SizeList, index: number, share: Fraction): Calculation {
  const ofNozzle = sourcedQuantity(pairing.policy, [list, index], share);
  return shareOfNozzle(pairing, list, sourcedTerm('k', ofNozzle, share));
}

function askedSize(pairing: Pairing, list: SizeList, size: AskedSize): Calculation {
  const { symbol, what } = nameOf[list];
  if ('ofNozzle' in size) {
    const share = { symbol: 'k', what: `${what} in nozzle diameters`, value: size.ofNozzle } as const;
    return shareOfNozzle(pairing, list, { ...share, dimension: 'ratio', ground: null, origin: 'asked' });
  }
  const value = clean(size.millimetres);
  const term: Term = { symbol: 's', what, value, dimension: 'length', ground: null, origin: 'asked' };
  return { symbol, what, formula: 's', terms: [term], exact: value, dimension: 'length', rounded: null };
}

/** The bore of the nozzle of a pairing, as the machine states it. */
export function nozzleDiameterOf({ machine, hotEnd, nozzle }: Pairing): SourcedValue {
  const ofHotEnd = ['hotEnds', machine.data.hotEnds.indexOf(hotEnd)];
  const place = [...ofHotEnd, 'nozzles', hotEnd.nozzles.indexOf(nozzle), 'diameter'];
  return sourcedQuantity(machine, place, nozzle.diameter, `diameter of nozzle ${nozzle.id}`);
}

function shareOfNozzle(pairing: Pairing, list: SizeList, share: Term): Calculation {
  const { symbol, what } = nameOf[list];
  const { nozzle } = pairing;
  const diameter = nozzleDiameterOf(pairing);
  return {
    symbol,
    what,
    formula: 'k * d',
    terms: [share, sourcedTerm('d', diameter, nozzle.diameter)],
    exact: clean(share.value * nozzle.diameter),
    dimension: 'length',
    rounded: null,
  };
}

const nameOf: Readonly<Record<SizeList, { readonly symbol: string; readonly what: string }>> = {
  layerHeights: { symbol: 'h', what: 'layer height' },
  lineWidths: { symbol: 'w', what: 'line width' },
};
