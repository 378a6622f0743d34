import { familiesOf } from '../../knowledge/families.ts';
import type { Filament, Polymer } from '../../registry/generated/documents.ts';
import { familyMisfits, type Misfit } from '../engine/family-misfits.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Allowances for grades: one figure counts as a misfit from `one`, and for no more than `most`. */
const counts = { one: 0.5, most: 3 };
/** All figures together: no grade of the own family is so far off, and one of the other family would be so near. */
const bounds = { own: 1.6, other: 0.34 };

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'The thermal figures of a filament fit its family better than any other.',
  rationale:
    'A block that was copied from a filament of another polymer can pass figure by figure; together the figures tell the family.',
  source:
    'Polymer profiles of the registry; how far grades differ from their family (nozzle and bed 15 K, softening and drying 10 K) is common practice, no source.',
  formula:
    'd = sum of min(3, x/a) over nozzle, bed, softening and drying, x how far the figure lies outside of the family, a the allowance; found where d >= 1.6 for its family, by two figures or more, and d <= 0.34 for another that states three or more',
  example: {
    kind: 'filament',
    bad: `
softening:
  - {value: 60 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
nozzleTemperature:
  - {value: 205..235 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
bedTemperature:
  - {value: 45..60 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
dryingTemperature:
  - {value: 48 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    good: `
softening:
  - {value: 78 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
dryingTemperature:
  - {value: 62 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  },
  *check({ data }, { registry }) {
    const [family, ...others] = familiesOf(data, registry);
    if (family === undefined || others.length > 0) return;
    const misfits = familyMisfits(data, family);
    const wrong = misfits.filter(({ off }) => off > counts.one);
    if (wrong.length < 2 || total(misfits) < bounds.own) return;
    const fitting = [...registry.polymer.values()].filter((polymer) => isFitting(data, polymer.data));
    if (fitting.length === 0) return;
    const named = fitting.map(({ id }) => id).join(' or ');
    yield {
      path: ['polymer'],
      part: 'value',
      message: `The thermal figures fit ${named}, and not ${family.id}: ${wrong.map(({ words }) => words).join(', ')}`,
      found: data.polymer,
      allowed: `${named}, or figures of ${family.id}`,
      help: `Check whether the figures were copied from a filament of ${named}: compare each with the sheet of this one.`,
    };
  },
};

function isFitting(filament: Filament, family: Polymer): boolean {
  const misfits = familyMisfits(filament, family);
  return misfits.length >= 3 && total(misfits) <= bounds.other;
}

function total(misfits: readonly Misfit[]): number {
  return misfits.reduce((sum, { off }) => sum + Math.min(counts.most, off), 0);
}
