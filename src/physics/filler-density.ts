import type { GramsPerCubicMillimetre } from '../units/canonical.ts';
import type { FillerMaterial, FillerSymbol } from './filler-symbol.ts';

/** The densities that a filler material is known by. */
interface FillerDensity {
  readonly low: GramsPerCubicMillimetre;
  readonly high: GramsPerCubicMillimetre;
  readonly source: string;
  /** True if the figures were recalled and not read in the source. */
  readonly fromMemory: boolean;
}

const HANDBOOK = 'Mark (ed.), Physical Properties of Polymers Handbook; Saechtling, Kunststoff Taschenbuch';
const ELEMENTS = 'CRC Handbook of Chemistry and Physics, physical constants of inorganic compounds';
const MINERALS = 'CRC Handbook of Chemistry and Physics, physical properties of minerals';

const byMaterial: Readonly<Partial<Record<FillerMaterial, FillerDensity>>> = {
  A: recalled(1.44, 1.45, HANDBOOK),
  B: recalled(2.5, 2.6, HANDBOOK),
  C: recalled(1.75, 1.8, HANDBOOK),
  D: recalled(2.4, 2.42, MINERALS),
  E: recalled(2.58, 2.65, MINERALS),
  G: recalled(2.54, 2.6, HANDBOOK),
  K: recalled(2.7, 2.72, MINERALS),
  L: recalled(1.5, 1.6, HANDBOOK),
  P: recalled(2.75, 3.0, MINERALS),
  Q: recalled(2.2, 2.65, MINERALS),
  T: recalled(2.7, 2.8, MINERALS),
  W: recalled(
    1.3,
    1.5,
    'Kollmann & Côté, Principles of Wood Science and Technology: compressed wood and cell wall',
  ),
};

const byMetal: Readonly<Record<string, FillerDensity>> = {
  Ag: recalled(10.5, 10.5, ELEMENTS),
  Al: recalled(2.7, 2.7, ELEMENTS),
  Cu: recalled(8.96, 8.96, ELEMENTS),
  CuSn: recalled(8.7, 8.9, 'ASM Handbook vol. 2, tin bronzes'),
  CuZn: recalled(8.4, 8.7, 'ASM Handbook vol. 2, brasses'),
  Fe: recalled(7.87, 7.87, ELEMENTS),
  FeCr: recalled(7.7, 7.8, 'ASM Handbook vol. 1, ferritic and martensitic stainless steels'),
  FeCrNi: recalled(7.8, 8.0, 'ASM Handbook vol. 1, austenitic stainless steels'),
  Mg: recalled(1.74, 1.74, ELEMENTS),
  Ni: recalled(8.9, 8.91, ELEMENTS),
  Pb: recalled(11.34, 11.35, ELEMENTS),
  Sn: recalled(7.29, 7.29, ELEMENTS),
  Ti: recalled(4.5, 4.51, ELEMENTS),
  W: recalled(19.25, 19.3, ELEMENTS),
  Zn: recalled(7.13, 7.14, ELEMENTS),
};

/**
 * Density range, in g/mm³, of a filler; `undefined` where the symbol does not say enough (any mineral, any metal, other).
 * Sources: with each figure.
 */
export function fillerDensity(filler: FillerSymbol): FillerDensity | undefined {
  if (filler.metal === undefined) {
    return byMaterial[filler.material];
  }
  return Object.hasOwn(byMetal, filler.metal) ? byMetal[filler.metal] : undefined;
}

/** Takes g/cm3, as handbooks print it. */
function recalled(low: number, high: number, source: string): FillerDensity {
  return { low: low / 1000, high: high / 1000, source, fromMemory: true };
}
