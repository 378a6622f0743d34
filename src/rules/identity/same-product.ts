import { groupedBy } from '../../registry/grouped-by.ts';
import { oncePerRegistry } from '../../registry/registry.ts';
import { isProduct, productKey } from '../engine/product-key.ts';
import type { ProfileRule } from '../engine/rule.ts';

const products = oncePerRegistry((registry) => groupedBy(registry.profiles.filter(isProduct), productKey));

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine', 'filament'],
  severity: 'error',
  statement: 'A product is described only once.',
  rationale: 'Of two profiles of one product, one gets the new limits and the other stays in the tables.',
  source: 'Format of the registry: one document a product.',
  example: {
    kind: 'filament',
    copied: true,
    bad: 'id: oakhollow/petg-clover',
    good: `
id: oakhollow/petg-clover
name: Clover PETG matt
density:
  - {value: 1.29 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  },
  *check(profile, { registry }) {
    const [first] = products(registry).get(productKey(profile)) ?? [];
    if (first === undefined || first.id === profile.id) return;
    yield {
      path: ['name'],
      part: 'value',
      message: `"${profile.data.name}" of ${profile.data.maker} is already described as ${first.id}`,
      found: profile.data.name,
      allowed: `a name that differs from ${first.id}`,
      help: `Merge the two into ${first.source.relativePath}, or give this one a different name.`,
    };
  },
};
