import type { Statement } from '../../registry/generated/documents.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { type PlacedStatement, statementsOf } from '../../registry/statement.ts';
import { foldedName, isProduct, type Product } from './product-key.ts';

const productsBySheet = oncePerRegistry((registry) =>
  groupedBy(registry.profiles.filter(isProduct), ({ data }) => data.sheet),
);

/** The other products that name a source as their sheet. */
export function otherOwners(source: string, product: Product, registry: Registry): Product[] {
  const owners = productsBySheet(registry).get(source) ?? [];
  return owners.filter(({ kind, id }) => kind !== product.kind || id !== product.id);
}

/** A statement that rests on the sheet of a product that it is not about. */
interface Borrowed extends PlacedStatement<Statement<unknown>> {
  readonly source: string;
  readonly owners: readonly Product[];
}

/**
 * The statements of a product that rest on the sheet of another one, which neither is of the same plastic nor stands
 * among the conditions.
 */
export function* borrowedStatements(product: Product, registry: Registry): Generator<Borrowed> {
  for (const { path, statement } of statementsOf(product)) {
    const { source, at } = statement;
    if (source === undefined || source === product.data.sheet) continue;
    const owners = otherOwners(source, product, registry);
    const isOwn = owners.some((owner) => isSamePlastic(owner, product));
    const isNamed = owners.some(({ id }) => id === at?.filament || id === at?.machine);
    if (owners.length > 0 && !isOwn && !isNamed) yield { path, statement, source, owners };
  }
}

/** Whether two products are one plastic of one maker, as it is sold in several diameters and colours. */
export function isSamePlastic(one: Product, other: Product): boolean {
  return (
    one.kind === 'filament' &&
    other.kind === 'filament' &&
    isSameMaker(one, other) &&
    one.data.designation === other.data.designation
  );
}

export function isSameMaker(one: Product, other: Product): boolean {
  return foldedName(one.data.maker) === foldedName(other.data.maker);
}
