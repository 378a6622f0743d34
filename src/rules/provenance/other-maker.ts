import type { Hit } from '../../registry/hit.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { alike } from '../engine/examples.ts';
import { foldedName, isProduct, type Product } from '../engine/product-key.ts';
import type { ProfileRule } from '../engine/rule.ts';
import { borrowedStatements, isSameMaker } from '../engine/sheet-owners.ts';

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine', 'filament'],
  severity: 'error',
  statement: 'No value of a product rests on the data sheet of a product of another maker.',
  rationale:
    'A block that was copied from another profile keeps its source: the value belongs to the other product.',
  source: 'Format of the registry: `sheet` names the data sheet of a product.',
  example: alike(
    'filament',
    { bad: 'plumstead-wren-sheet', good: 'oakhollow-clover-petg-sheet' },
    (sheet) => `
spoolMass: 1 kg
fan:
  - {value: 20..60 %, basis: claimed, source: ${sheet}}`,
  ),
  *check(profile, { registry }) {
    const author = foreignAuthor(profile, registry);
    if (author !== null) yield author;
    for (const { path, source, owners } of borrowedStatements(profile, registry)) {
      const [owner] = owners;
      if (owner === undefined || owners.some((one) => isSameMaker(one, profile))) continue;
      yield {
        path: [...path, 'source'],
        part: 'value',
        message: `"${source}" is the data sheet of ${owner.data.name} by ${owner.data.maker}, not of ${profile.data.name} by ${profile.data.maker}`,
        found: source,
        allowed: `${profile.data.sheet}, or another source about ${profile.data.name}`,
        help: `Look the value up in the sheet of ${profile.data.name}, and correct it together with its source.`,
      };
    }
  },
};

/** The sheet of a product as the work of another maker of the registry; test houses and dealers may issue one. */
function foreignAuthor({ data }: Product, registry: Registry): Hit | null {
  const authors = (registry.source.get(data.sheet)?.data.author ?? []).flatMap(
    ({ literal }) => literal ?? [],
  );
  if (authors.some((author) => foldedName(author) === foldedName(data.maker))) return null;
  const maker = authors.find((author) => makers(registry).has(foldedName(author)));
  return maker === undefined
    ? null
    : {
        path: ['sheet'],
        part: 'value',
        message: `"${data.sheet}" was issued by ${maker}, but ${data.name} is made by ${data.maker}`,
        found: `${data.sheet} by ${maker}`,
        allowed: `a sheet by ${data.maker}`,
        help: `Name the sheet of ${data.name}, or correct the maker of the product or the author of the source.`,
      };
}

const makers = oncePerRegistry(
  (registry) => new Set(registry.profiles.filter(isProduct).map(({ data }) => foldedName(data.maker))),
);
