import { diametersIn, fitsHotEnd } from '../../knowledge/filament-diameters.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Hit } from '../../registry/hit.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { statementsOf } from '../../registry/statement.ts';
import { shown } from '../../units/wording.ts';
import { foldedName, isProduct, type Product } from '../engine/product-key.ts';
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
    yield* otherDiameters(profile, registry);
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
  const owner =
    others.find((other) => namedShare(other, title) > own) ?? productInTitle(title, profile, registry);
  return owner === undefined
    ? null
    : hit(['sheet'], sheet, owner, profile, `the sheet of ${profile.data.name}`);
}

/**
 * Another product of the kind whose whole name stands in the title of a sheet that does not hold all of the own one: a product of
 * the same maker, or of any where nothing of the own name stands there.
 */
function productInTitle(title: string, profile: Product, registry: Registry): Product | undefined {
  const own = namedShare(profile, title);
  if (own === 1) return undefined;
  const named = title.split(/\s+/).flatMap((word) => productsByWord(registry).get(foldedName(word)) ?? []);
  return named.find(
    (other) =>
      other.kind === profile.kind &&
      namedShare(other, title) === 1 &&
      !isSamePlastic(other, profile) &&
      (own === 0 || isSameMaker(other, profile)),
  );
}

const productsByWord = oncePerRegistry((registry) =>
  groupedBy(registry.profiles.filter(isProduct), ({ data }) => foldedName(data.name.split(/\s+/)[0] ?? '')),
);

/** Sources of the values of a filament, the sheet first, whose title names another diameter and not its own. */
function* otherDiameters(profile: Product, registry: Registry): Generator<Hit> {
  if (profile.kind !== 'filament') return;
  const { sheet, diameter } = profile.data;
  const places = [...statementsOf(profile)].map(({ path, statement: { source } }) => ({
    path: [...path, 'source'],
    source,
  }));
  for (const { path, source } of [{ path: ['sheet'], source: sheet }, ...places]) {
    if (source === undefined || (source === sheet && path.length > 1)) continue;
    // In a title 3.0 is an edition more often than a diameter.
    const named = diametersIn(registry.source.get(source)?.data.title ?? '').filter((each) => each < 3);
    if (named.length === 0 || named.some((each) => fitsHotEnd(each, diameter))) continue;
    const other = shown(named[0] ?? 0, 'length');
    yield {
      path,
      part: 'value',
      message: `"${source}" is about filament of ${other}, and ${profile.data.name} has a diameter of ${shown(diameter, 'length')}`,
      found: source,
      allowed: `a source about ${shown(diameter, 'length')}`,
      help: `Name the sheet of ${profile.data.name}, and compare the values with it.`,
    };
  }
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
