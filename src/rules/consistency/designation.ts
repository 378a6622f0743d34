import { isOfFamily } from '../../knowledge/families.ts';
import { type PlasticsDesignation, parsePlasticsDesignation } from '../../physics/plastics-designation.ts';
import type { Filament } from '../../registry/generated/documents.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Designations give whole per cents. */
const rounding = 0.006;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['filament'],
  severity: 'error',
  statement: 'The designation of a filament names its polymer and its fillers as the profile states them.',
  rationale:
    'Density, abrasion and drying are judged by polymer and fillers; people rely on the designation.',
  source:
    'ISO 1043-1:2011, ISO 1043-2:2011 and ISO 11469 (from memory): symbols of polymers and fillers, mass per cent.',
  example: {
    kind: 'filament',
    bad: 'designation: PET-G-GF20',
    good: 'designation: PET-G',
  },
  *check(profile) {
    const { designation: written } = profile.data;
    const parsed = parsePlasticsDesignation(written);
    const fault = parsed.ok ? mismatch(profile.data, parsed.value) : parsed.error.message;
    if (fault === null) return;
    const suggestion = parsed.ok ? null : parsed.error.suggestions[0];
    yield {
      path: ['designation'],
      part: 'value',
      message: `The designation does not fit: ${fault}`,
      found: written,
      allowed: parsed.ok
        ? `${profile.data.polymer} with ${listOf(symbolsOf(profile.data))}`
        : 'the form of ISO 1043: PA6-GF30',
      help: suggestion
        ? `Write \`${suggestion}\`.`
        : 'Correct the designation, or the polymer and the fillers.',
    };
  },
};

function mismatch(
  filament: Filament,
  { polymers, fillers, massFraction }: PlasticsDesignation,
): string | null {
  const { polymer, fillers: stated = [] } = filament;
  if (!polymers.some((symbol) => isOfFamily(symbol, polymer) || polymer.split('+').includes(symbol)))
    return `it names ${polymers.join(' and ')}, the profile says ${polymer}`;
  const symbols = symbolsOf(filament);
  const named = fillers.map(({ symbol }) => symbol);
  if (named.toSorted().join() !== symbols.toSorted().join())
    return `it names ${listOf(named)}, the profile states ${listOf(symbols)}`;
  const total = stated.reduce((sum, filler) => sum + filler.massFraction, 0);
  for (const { symbol, massFraction: share } of fillers) {
    const own = stated.find((filler) => filler.symbol === symbol)?.massFraction;
    if (share !== undefined && own !== undefined && Math.abs(share - own) > rounding)
      return `it gives ${shown(share, 'ratio')} of ${symbol}, the profile ${shown(own, 'ratio')} under \`fillers\``;
  }
  if (massFraction !== undefined && Math.abs(massFraction - total) > rounding * Math.max(1, stated.length))
    return `it gives ${shown(massFraction, 'ratio')} of fillers, the profile ${shown(total, 'ratio')}`;
  return null;
}

function symbolsOf({ fillers = [] }: Filament): readonly string[] {
  return fillers.map(({ symbol }) => symbol);
}

function listOf(symbols: readonly string[]): string {
  return symbols.length === 0 ? 'no filler' : symbols.join(' and ');
}
