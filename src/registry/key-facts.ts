import type { Kind } from './kind.ts';

/**
 * On which side of the true value a stated one is safe, as the schema says beside each key:
 *
 * - `below`: of a limit not to exceed.
 * - `above`: of a least that is needed, the shortest layer time for instance.
 * - `within`: of a window to stay in.
 * - `same`: what a thing is made of or fits; any other is another thing.
 * - `present`: a part or an ability; without it less can be done.
 * - `any`: a number that tables and plans calculate with.
 * - `unused`: nothing is derived from it.
 */
export type SafeDirection = 'below' | 'above' | 'within' | 'same' | 'present' | 'any' | 'unused';

/** A range as it is written in the schema, and its ends in the canonical unit. */
export interface BandRange {
  readonly text: string;
  readonly low: number;
  readonly high: number;
}

/** In which band a value lies. */
export interface PlausibleBand {
  /** What exists has. */
  readonly usual: BandRange;
  /** Outside of it no such thing works; a factor of ten or a unit is off. */
  readonly possible: BandRange;
  readonly source: string;
}

/** How far apart the ends of one stated range may be: by a factor, or by a difference in K. */
export type RangeSpan = { readonly factor: number } | { readonly kelvin: number };

/** What the schema says of a key beside its shape; `schema/key-facts.schema.json` explains each of them. */
export interface KeyFacts {
  readonly label?: string;
  readonly safe?: SafeDirection;
  readonly plausible?: PlausibleBand;
  readonly span?: RangeSpan;
  readonly claim?: number;
  readonly limits?: string;
  readonly usualUnit?: string;
  readonly ratioTo?: string;
}

/** One fact about the keys of each kind, by place: `hotEnds[].meltFlow`. */
export type FactTable<Fact> = Readonly<Record<Kind, Readonly<Record<string, Fact>>>>;

/** What a claim is about: the setting that a limit limits, else the key itself. */
export function claimedProperty(place: string, limits: string | undefined): string {
  return limits ?? place.slice(place.lastIndexOf('.') + 1);
}

/**
 * What a key is called, with the part of a list that it belongs to: `melt flow of the hot end`. `labelOf` gives the label
 * of a place; null where the key has none.
 */
export function labelWithPart(place: string, labelOf: (place: string) => string | undefined): string | null {
  const label = labelOf(place);
  if (label === undefined) return null;
  const part = partOf(place);
  const partLabel = part === null ? undefined : labelOf(part);
  return partLabel === undefined ? label : `${label} of the ${partLabel}`;
}

/** The entry of a list that a place lies in: `hotEnds[]` for `hotEnds[].meltFlow`; null where it lies in none. */
export function partOf(place: string): string | null {
  const end = place.lastIndexOf('[].');
  return end === -1 ? null : place.slice(0, end + '[]'.length);
}
