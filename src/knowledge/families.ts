import { parsePlasticsDesignation } from '../physics/plastics-designation.ts';
import type { Filament, Polymer, Statement } from '../registry/generated/documents.ts';
import type { Registry } from '../registry/registry.ts';
import type { Range } from '../units/canonical.ts';

/** Properties of a family that are stated as ranges. */
export type FamilyRange = {
  [Key in keyof Polymer]-?: NonNullable<Polymer[Key]> extends readonly Statement<Range>[] ? Key : never;
}[keyof Polymer];

/** The widest range that the sources of one or more families leave, and where it comes from. */
export interface Envelope extends Range {
  readonly source: string;
}

/**
 * The polymer families that a filament is made of: its base polymer, and for a blend the others of its designation.
 * None at all if one of them is not in the registry, since nothing can then be said about the blend.
 */
export function familiesOf(filament: Filament, registry: Registry): readonly Polymer[] {
  const base = registry.polymer.get(filament.polymer)?.data;
  if (base === undefined) return [];
  const designation = parsePlasticsDesignation(filament.designation);
  const others = designation.ok
    ? designation.value.polymers.filter((symbol) => !isOfFamily(symbol, filament.polymer))
    : [];
  const known = others.map((symbol) => registry.polymer.get(symbol)?.data);
  const found = known.filter((polymer) => polymer !== undefined);
  return found.length === known.length ? [base, ...found] : [];
}

/**
 * Symbols of copolymers and modified grades that are judged as a family with another symbol: they share its density, softening
 * and nozzle temperatures (common practice, no source; the symbols by ISO 1043-1:2011, from memory, but for PCTG).
 */
const kin: Readonly<Record<string, string>> = {
  MABS: 'ABS',
  PCTG: 'PET-G',
  PDLLA: 'PLA',
  PLLA: 'PLA',
  PVOH: 'PVAL',
  SB: 'PS-HI',
};

/**
 * Whether a polymer symbol is that of a family or of one of its kinds: `TPU-ARES` is of the family `TPU`, the copolymer
 * `PA6/66` of `PA6` and of `PA66`.
 */
export function isOfFamily(symbol: string, family: string): boolean {
  if (symbol === family || symbol.startsWith(`${family}-`)) return true;
  return kin[symbol] === family || copolymerisedOf(symbol).includes(family);
}

/** The homopolymers of a copolymer's symbol: PA6 and PA66 of `PA6/66`; none where it has no stroke. */
function copolymerisedOf(symbol: string): readonly string[] {
  const [first = '', ...others] = symbol.split('/');
  const letters = /^[A-Z]*/.exec(first)?.[0] ?? '';
  return others.length === 0 ? [] : [first, ...others.map((other) => letters + other)];
}

/** What names call a foamed grade, or one that foams in the nozzle. */
const foamWords = /\bfoam\w*\b|\b(?:light|feather)-?weight\b|\bLW\b/i;

/** Whether a filament is foamed, or foams in the nozzle: by its designation (`PLA-E`) or by its name. */
export function isFoamed({ name, designation }: Filament): boolean {
  const parsed = parsePlasticsDesignation(designation);
  const expanded = parsed.ok && parsed.value.polymers.some((symbol) => symbol.split('-').includes('E'));
  return expanded || foamWords.test(name);
}

/** The widest range that the statements of some families give for a property; null where none is stated. */
export function widest(families: readonly Polymer[], property: FamilyRange): Envelope | null {
  const statements = families.flatMap((family) => family[property] ?? []);
  if (statements.length === 0) return null;
  return {
    low: Math.min(...statements.map(({ value }) => value.low)),
    high: Math.max(...statements.map(({ value }) => value.high)),
    source: sourceOf(families, statements),
  };
}

/** The highest nozzle temperature, in degrees Celsius, that some families may see; null where none is stated. */
export function nozzleLimit(
  families: readonly Polymer[],
): { readonly value: number; readonly source: string } | null {
  const statements = families.flatMap((family) => family.nozzleTemperatureLimit ?? []);
  if (statements.length === 0) return null;
  return {
    value: Math.max(...statements.map(({ value }) => value)),
    source: sourceOf(families, statements),
  };
}

/** `PC and ABS`: the families as messages name them. */
export function familyNames(families: readonly Polymer[]): string {
  return families.map(({ id }) => id).join(' and ');
}

function sourceOf(families: readonly Polymer[], statements: readonly Statement<unknown>[]): string {
  const files = families.map(({ id }) => `polymers/${id}.yaml`).join(', ');
  const sources = [...new Set(statements.flatMap(({ source }) => source ?? []))].join(', ');
  return sources === '' ? files : `${files} (${sources})`;
}
