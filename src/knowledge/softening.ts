import type { Filament, Polymer } from '../registry/generated/documents.ts';
import { highestStated } from '../registry/stated.ts';
import type { DegreesCelsius } from '../units/canonical.ts';
import { shown } from '../units/wording.ts';
import { familyNames, widest } from './families.ts';
import { roomTemperature } from './melt-heat.ts';

/** A temperature above which the filament is soft, and where it comes from. */
export interface Softening {
  readonly value: DegreesCelsius;
  /** `58 Cel, where the profile says that it softens`. */
  readonly text: string;
  readonly source: string;
}

/**
 * Where a filament softens: what its profile states, else the highest glass transition of an amorphous
 * family, else the lowest melting of a semi-crystalline one. Null where nothing is known.
 */
export function softeningOf(filament: Filament, families: readonly Polymer[]): Softening | null {
  const value = highestStated(filament.softening);
  if (value === null) return familySoftening(families);
  return {
    value,
    text: `${shown(value, 'temperature')}, where the profile says that it softens`,
    source: `filaments/${filament.id}.yaml, softening`,
  };
}

/** Dried colder than its family a spool takes longer, but comes to no harm; hotter it ages (K; common practice, no source). */
export const dryingAllowance = { below: 15, above: 20 };

/** Softening temperatures are known to about so many K (common practice, no source). */
export const softeningUncertainty = 2;

/**
 * Where the families of a filament soften, if the filament states a higher softening of its own: between the two, a
 * spool is safe only if that statement is right. Null where its own is not higher, or nothing is known.
 */
export function softerFamily(filament: Filament, families: readonly Polymer[]): Softening | null {
  const own = softeningOf(filament, families);
  const family = familySoftening(families);
  return own === null || family === null || own.value <= family.value ? null : family;
}

/**
 * Whether a family softens at its glass transition: an amorphous one that is hard in a room. An elastomer is past its own there, and
 * its hard phase, of which the family says nothing, gives it shape.
 */
export function softensAtGlass(family: Polymer): boolean {
  const glass = widest([family], 'glassTransition');
  return family.structure === 'amorphous' && glass !== null && glass.high >= roomTemperature;
}

/** The lower of what a filament states of its softening and of where its families soften; null where nothing is known. */
export function lowerSoftening(filament: Filament, families: readonly Polymer[]): Softening | null {
  return softerFamily(filament, families) ?? softeningOf(filament, families);
}

function familySoftening(families: readonly Polymer[]): Softening | null {
  const amorphous = families.filter(softensAtGlass);
  const glass = widest(amorphous, 'glassTransition');
  if (glass !== null) {
    const text = `${shown(glass.high, 'temperature')}, the glass transition of ${familyNames(amorphous)}`;
    return { value: glass.high, text, source: glass.source };
  }
  const melting = widest(families, 'melting');
  if (melting === null) return null;
  const text = `${shown(melting.low, 'temperature')}, where ${familyNames(families)} begins to melt`;
  return { value: melting.low, text, source: melting.source };
}
