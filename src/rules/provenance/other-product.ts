import type { Hit } from '../../registry/hit.ts';
import type { Registry } from '../../registry/registry.ts';
import { foldedName, type Product } from '../engine/product-key.ts';
import type { ProfileRule } from '../engine/rule.ts';
import { borrowedStatements, isSameMaker, isSamePlastic, otherOwners } from '../engine/sheet-owners.ts';

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine', 'filament'],
  severity: 'warning',
  statement: 'The sheet of a product, and what its values rest on, is not the sheet of another product.',
  rationale:
    'Products of one maker have similar ids; one wrong word in them takes every value from the wrong sheet.',
  source:
    'Format of the registry: `sheet` names the data sheet of a product. One sheet for several diameters or colours of a plastic, or one with a title that names no single product, is no breach.',
  example: {
    kind: 'filament',
    bad: 'sheet: oakhollow-daisy-pla-sheet',
    good: 'sheet: oakhollow-clover-petg-sheet',
  },
  *check(profile, { registry }) {
    const sheet = misnamedSheet(profile, registry);
    if (sheet !== null) yield sheet;
    for (const { path, source, owners } of borrowedStatements(profile, registry)) {
      const owner = owners.find((one) => isSameMaker(one, profile));
      // Beside a wrong sheet, the sources of the values are the right ones.
      if (owner === undefined || sheet !== null) continue;
      yield hit([...path, 'source'], source, owner, profile, profile.data.sheet);
    }
  },
};

function misnamedSheet(profile: Product, registry: Registry): Hit | null {
  const { sheet } = profile.data;
  const title = registry.source.get(sheet)?.data.title;
  if (title === undefined) return null;
  const others = otherOwners(sheet, profile, registry);
  if (others.some((other) => isSamePlastic(other, profile))) return null;
  const own = namedShare(profile, title);
  // A model and its larger sister share a name, and often a sheet.
  if (profile.kind === 'machine' && own > 0) return null;
  const owner = others.find((other) => namedShare(other, title) > own);
  return owner === undefined
    ? null
    : hit(['sheet'], sheet, owner, profile, `the sheet of ${profile.data.name}`);
}

/** The share of the words of a product's name that a title holds. */
function namedShare({ data }: Product, title: string): number {
  const words = data.name.split(/\s+/).map(foldedName);
  const held = title.split(/\s+/).map(foldedName);
  return words.filter((word) => held.includes(word)).length / words.length;
}

function hit(path: Hit['path'], source: string, owner: Product, profile: Product, allowed: string): Hit {
  return {
    path,
    part: 'value',
    message: `"${source}" is the data sheet of ${owner.data.name}, not of ${profile.data.name}`,
    found: source,
    allowed,
    help: `Name the sheet of ${profile.data.name}, and compare the values with it.`,
  };
}
