import type { Registry } from '../../registry/registry.ts';
import { statementsOf } from '../../registry/statement.ts';
import { alike } from '../engine/examples.ts';
import { foldedName, type Product } from '../engine/product-key.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** What a maker issues about its own products; articles and books pass through other hands. */
const issuedByMakers: readonly string[] = ['document', 'webpage', 'dataset'];

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['machine', 'filament'],
  severity: 'error',
  statement: 'What a maker states about its own product is claimed, not published.',
  rationale:
    'Tables and policies trust a published value more than a claimed one; a sheet must not gain that by one word.',
  source: 'Format of the registry: published values come from those who do not sell the product.',
  example: alike(
    'filament',
    { bad: 'published', good: 'claimed' },
    (basis) => `
density:
  - {value: 1.27 g/cm3, basis: ${basis}, source: oakhollow-clover-petg-sheet}`,
  ),
  *check(profile, { registry }) {
    for (const { path, statement } of statementsOf(profile)) {
      const { basis, source } = statement;
      if (basis !== 'published' || source === undefined || !isByMaker(source, profile, registry)) continue;
      yield {
        path: [...path, 'basis'],
        part: 'value',
        message: `The basis is "published", but "${source}" is ${profile.data.maker}'s own statement about ${profile.data.name}`,
        found: basis,
        allowed: 'claimed',
        help: 'Write `basis: claimed`, or name the independent source that published the value.',
      };
    }
  },
};

/** Whether a source is the sheet of the product, or another paper of its maker. */
function isByMaker(id: string, { data }: Product, registry: Registry): boolean {
  if (id === data.sheet) return true;
  const source = registry.source.get(id)?.data;
  if (source === undefined || !issuedByMakers.includes(source.type)) return false;
  const authors = (source.author ?? []).flatMap(({ literal }) => literal ?? []);
  return authors.some((author) => foldedName(author) === foldedName(data.maker));
}
