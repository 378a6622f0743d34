import type { FillerMaterial } from './filler-symbol.ts';

/** Vickers hardness number. */
export type VickersHardness = number;

/** The Vickers hardness that a material is known by. */
export interface HardnessRange {
  readonly low: VickersHardness;
  readonly high: VickersHardness;
  readonly source: string;
  /** True if the figures were recalled and not read in the source. */
  readonly fromMemory: boolean;
}

const MOHS_AND_VICKERS = 'Mohs minerals with their Vickers hardness, foundry encyclopaedia table';

/** What nozzles are made of: the wall that the filler rubs against. */
export const nozzleHardness = {
  brass: recalled(100, 150, 'ASTM B16 (55 to 78 HRB), converted by ASTM E140 Table 4'),
  // Plates are some micrometres thick, and the edge of the bore wears first.
  platedBrass: recalled(100, 150, 'the brass below the plate: ASTM B16 (55 to 78 HRB), by ASTM E140 Table 4'),
  copper: recalled(120, 180, 'copper with chromium and zirconium, aged, 70 to 85 HRB: ASM Handbook vol. 2'),
  stainlessSteel: recalled(150, 220, 'ASTM A240, austenitic, annealed'),
  hardenedSteel: recalled(595, 746, '55 to 62 HRC, converted by ASTM E140 Table 1'),
  carbide: recalled(1300, 1800, 'ASM Handbook vol. 2, cemented carbides'),
  ruby: read(1800, 2100, `${MOHS_AND_VICKERS}: corundum`),
} as const satisfies Readonly<Record<string, HardnessRange>>;

/** A nozzle material with a known hardness. */
export type NozzleMaterial = keyof typeof nozzleHardness;

const fillerHardnessTable: Readonly<Partial<Record<FillerMaterial, HardnessRange>>> = {
  B: recalled(2500, 3500, 'ASM Handbook vol. 21, boron fibre'),
  // The hardness of carbon fibre depends on direction; that it wears brass like glass is common practice, no source.
  C: recalled(500, 620, 'judged like E-glass: common practice, no source'),
  D: recalled(36, 190, 'gibbsite, Mohs 2.5 to 3.5: between gypsum and fluorite'),
  E: recalled(36, 140, 'kaolinite, Mohs 2 to 2.5: between gypsum and calcite'),
  G: recalled(500, 620, 'E-glass fibre, 5 to 6 GPa: ASM Handbook vol. 21'),
  K: read(140, 140, `${MOHS_AND_VICKERS}: calcite`),
  L: recalled(2, 8, 'softer than wood across the grain: EN 1534 Brinell hardness'),
  P: recalled(36, 140, 'muscovite, Mohs 2.5 to 3: between gypsum and calcite'),
  Q: read(900, 1280, `${MOHS_AND_VICKERS}: quartz`),
  T: recalled(2, 36, 'Mohs 1: softer than gypsum'),
  W: recalled(2, 8, 'EN 1534 Brinell hardness of timber'),
};

/** Vickers hardness of a filler material; `undefined` where its letter does not say enough. Sources: with each figure. */
export function fillerHardness(material: FillerMaterial): HardnessRange | undefined {
  return fillerHardnessTable[material];
}

function recalled(low: VickersHardness, high: VickersHardness, source: string): HardnessRange {
  return { low, high, source, fromMemory: true };
}

function read(low: VickersHardness, high: VickersHardness, source: string): HardnessRange {
  return { low, high, source, fromMemory: false };
}
