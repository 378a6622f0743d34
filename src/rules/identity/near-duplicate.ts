import { distance } from 'fastest-levenshtein';
import { shapes } from '../../registry/generated/shapes.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { oncePerRegistry } from '../../registry/registry.ts';
import { leavesOf } from '../../registry/shape.ts';
import { foldedName, isProduct, type Product, productKey } from '../engine/product-key.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Letters by which two spellings of one name differ (common practice, no source). */
const spellingDistance = 2;

const twins = oncePerRegistry((registry) => groupedBy(registry.profiles.filter(isProduct), figuresKey));

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine', 'filament'],
  severity: 'warning',
  statement: 'Two products of one maker with nearly the same name differ in at least one figure.',
  rationale: 'They are usually one product, entered twice with different spellings.',
  source: 'Common practice, no source.',
  example: {
    kind: 'filament',
    copied: true,
    bad: `
id: oakhollow/clovr-petg
name: Clovr PETG`,
    good: `
id: oakhollow/thistle-petg
name: Thistle PETG`,
  },
  *check(profile, { registry }) {
    const equal = twins(registry).get(figuresKey(profile)) ?? [];
    const earlier = equal.slice(0, equal.indexOf(profile)).find((other) => isSpellingOf(other, profile));
    if (earlier === undefined) return;
    yield {
      path: ['name'],
      part: 'value',
      message: `"${profile.data.name}" has the same figures as "${earlier.data.name}" of the same maker (${earlier.id})`,
      found: profile.data.name,
      allowed: `a name or a figure that differs from ${earlier.id}`,
      help: 'Merge them if they are one product; otherwise acknowledge the finding.',
    };
  },
};

/** Kind, maker and every figure of a product. */
function figuresKey(product: Product): string {
  const { kind, data } = product;
  const figures = [...leavesOf('quantity', shapes[kind], data)].map(({ path, value }) => [path, value]);
  return JSON.stringify([kind, foldedName(data.maker), figures]);
}

function isSpellingOf(one: Product, other: Product): boolean {
  if (one.id === other.id || productKey(one) === productKey(other)) return false;
  const [a, b] = [foldedName(one.data.name), foldedName(other.data.name)];
  return Math.min(a.length, b.length) > 2 * spellingDistance && distance(a, b) <= spellingDistance;
}
