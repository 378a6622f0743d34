import { widest } from '../../knowledge/families.ts';
import type { Filament, Polymer } from '../../registry/generated/documents.ts';
import type { Range } from '../../units/canonical.ts';

/** Figures of a filament that tell its family, and in K how far grades lie outside of it (common practice, no source). */
const telling = [
  { key: 'nozzleTemperature', words: 'nozzle temperature', allowance: 15 },
  { key: 'softening', words: 'softening', allowance: 10 },
  { key: 'dryingTemperature', words: 'drying temperature', allowance: 10 },
  { key: 'bedTemperature', words: 'bed temperature', allowance: 15 },
] as const;

type Telling = (typeof telling)[number];

/**
 * A bed is from this share of the glass transition in degrees Celsius to so many K above it, and a semi-crystalline grade
 * softens near its glass transition or from so many K below its melting (common practice, no source).
 */
const around = { bedShare: 0.65, bedAbove: 10, belowMelting: 60 };

/** How far a figure lies outside of what a family has. */
export interface Misfit {
  readonly key: Telling['key'];
  /** `softening`. */
  readonly words: string;
  /** Multiples of the allowance for grades; 0 inside of the family. */
  readonly off: number;
}

/**
 * The thermal figures of a filament beside those of a family: of each that both state, by how many allowances the
 * farthest statement lies outside.
 */
export function familyMisfits(filament: Filament, family: Polymer): readonly Misfit[] {
  return telling.flatMap(({ key, words, allowance }) => {
    const usual = usualOf(key, family);
    const stated = (filament[key] ?? []).map(({ value }) => value);
    if (usual.length === 0 || stated.length === 0) return [];
    const offs = stated.map((value) => Math.min(...usual.map((range) => outside(value, range))));
    return [{ key, words, off: Math.max(...offs) / allowance }];
  });
}

/** The ranges in one of which a family has a figure; none where nothing is known. */
function usualOf(key: Telling['key'], family: Polymer): readonly Range[] {
  const glass = widest([family], 'glassTransition');
  const melting = widest([family], 'melting');
  if (key === 'nozzleTemperature' || key === 'dryingTemperature') return known(widest([family], key));
  if (key === 'softening' && family.structure === 'semiCrystalline') {
    return [
      ...known(glass),
      ...known(melting && { low: melting.low - around.belowMelting, high: melting.high }),
    ];
  }
  if (key === 'softening') return known(glass);
  if (glass === null || family.structure === 'semiCrystalline') return [];
  return [{ low: around.bedShare * glass.low, high: glass.high + around.bedAbove }];
}

function known(range: Range | null): readonly Range[] {
  return range === null ? [] : [range];
}

/** How far a value, or the farther end of a range, lies outside of a range. */
function outside(value: number | Range, { low, high }: Range): number {
  const ends = typeof value === 'number' ? { low: value, high: value } : value;
  return Math.max(0, low - ends.low, ends.high - high);
}
