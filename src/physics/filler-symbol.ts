/**
 * First letters of a filler symbol and the material they stand for.
 * Source: ISO 1043-2:2011, Plastics, Symbols and abbreviated terms, Part 2: Fillers and reinforcing materials (from memory).
 */
export const fillerMaterials = {
  A: 'aramid',
  B: 'boron',
  C: 'carbon',
  D: 'alumina trihydrate',
  E: 'clay',
  G: 'glass',
  K: 'calcium carbonate',
  L: 'cellulose',
  M: 'mineral',
  ME: 'metal',
  N: 'natural organic material',
  P: 'mica',
  Q: 'silica',
  S: 'synthetic organic material',
  T: 'talcum',
  W: 'wood',
  X: 'unspecified material',
  Z: 'other material',
} as const;

/** Letter or letters of a filler's material, as the keys of `fillerMaterials`. */
export type FillerMaterial = keyof typeof fillerMaterials;

/** Second letters of a filler symbol and the form or structure they stand for. Source: ISO 1043-2:2011 (from memory). */
const fillerForms = {
  B: 'beads',
  C: 'chips',
  D: 'powder',
  F: 'fibre',
  G: 'ground',
  H: 'whisker',
  K: 'knitted fabric',
  L: 'layer',
  M: 'thick mat',
  N: 'thin non-woven',
  P: 'paper',
  R: 'roving',
  S: 'flake',
  T: 'twisted yarn',
  V: 'veneer',
  W: 'woven fabric',
  X: 'unspecified form',
  Y: 'yarn',
  Z: 'other form',
} as const;

/** Letter of a filler's form, as the keys of `fillerForms`. */
type FillerForm = keyof typeof fillerForms;

/** A filler symbol taken apart: `GF` is glass fibre, `GCM` glass chopped-strand mat, `MED(Al)` aluminium powder. */
export interface FillerSymbol {
  readonly symbol: string;
  readonly material: FillerMaterial;
  readonly forms: readonly FillerForm[];
  /** Chemical symbols of a metal, such as `Al` or `CuSn`, where the symbol tells them. */
  readonly metal: string | undefined;
}

const SYMBOL = /^(ME|[A-Z])([A-Z]{1,2})(?:\(((?:[A-Z][a-z]?)+)\))?$/;

/** Takes a filler symbol apart by ISO 1043-2; `undefined` if the text is none. */
export function readFillerSymbol(text: string): FillerSymbol | undefined {
  const [, material = '', formLetters = '', metal] = SYMBOL.exec(text) ?? [];
  const forms = [...formLetters].filter(isFillerForm);
  if (!isFillerMaterial(material) || forms.length < formLetters.length) {
    return undefined;
  }
  return metal !== undefined && material !== 'ME' ? undefined : { symbol: text, material, forms, metal };
}

function isFillerMaterial(letters: string): letters is FillerMaterial {
  return Object.hasOwn(fillerMaterials, letters);
}

function isFillerForm(letter: string): letter is FillerForm {
  return Object.hasOwn(fillerForms, letter);
}
