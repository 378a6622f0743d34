import type { Statement } from '../../registry/generated/documents.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import type { Kind } from '../../registry/kind.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { isObject, type ObjectShape, type QuantityShape, type Shape } from '../../registry/shape.ts';
import type { Conditions } from '../../registry/statement.ts';

/** Something that a profile says, with a name by which it is found again in another version of the profile. */
export interface ProfileEntry {
  /** Its name: `hotEnds/main/temperatureLimit`; items of a list go by their id, not by their position. */
  readonly name: string;
  /** Its place in any profile of the kind: `hotEnds[].temperatureLimit`. */
  readonly place: string;
  readonly content: EntryContent;
}

type EntryContent =
  | {
      readonly type: 'statements';
      readonly statements: readonly Statement<unknown>[];
      readonly quantity: QuantityShape;
    }
  | { readonly type: 'quantity'; readonly value: unknown; readonly quantity: QuantityShape }
  | { readonly type: 'word'; readonly value: unknown }
  | { readonly type: 'item'; readonly value: unknown; readonly quantity: QuantityShape | null };

/** Keys that say which profile it is, not what it says. */
const identifying = new Set(['kind', 'id', 'version']);

/** Everything that a profile says, by name. An item of a list comes before what stands in it. */
export function entriesOf({ kind, data }: AnyProfile): ReadonlyMap<string, ProfileEntry> {
  const entries = new Map<string, ProfileEntry>();
  for (const entry of walk(rootShape(kind), data, '', '')) {
    if (!entries.has(entry.name)) entries.set(entry.name, entry);
  }
  return entries;
}

function rootShape(kind: Kind): ObjectShape {
  const properties = Object.entries(shapes[kind].properties).filter(([key]) => !identifying.has(key));
  return { type: 'object', properties: Object.fromEntries(properties) };
}

function* walk(shape: Shape, value: unknown, name: string, place: string): Generator<ProfileEntry> {
  if (shape.type === 'quantity') {
    yield { name, place, content: { type: 'quantity', value, quantity: shape } };
  } else if (shape.type === 'object' && isObject(value)) {
    for (const [key, inner] of Object.entries(shape.properties)) {
      if (!Object.hasOwn(value, key)) continue;
      yield* walk(inner, value[key], joined(name, '/', key), joined(place, '.', key));
    }
  } else if (shape.type === 'list' && Array.isArray(value)) {
    yield* walkList(shape.items, value, name, place);
  } else {
    yield { name, place, content: { type: 'word', value } };
  }
}

function* walkList(
  items: Shape,
  values: readonly unknown[],
  name: string,
  place: string,
): Generator<ProfileEntry> {
  const stated = statedQuantity(items);
  if (stated !== null) {
    // The shape of a statement stands for values that the statement schema has accepted.
    const statements = values as Statement<unknown>[];
    yield { name, place, content: { type: 'statements', statements, quantity: stated } };
    return;
  }
  const quantity = items.type === 'quantity' ? items : null;
  for (const [index, value] of values.entries()) {
    const itemName = `${name}/${itemKey(value, index)}`;
    yield { name: itemName, place: `${place}[]`, content: { type: 'item', value, quantity } };
    if (items.type === 'object') yield* walk(items, value, itemName, `${place}[]`);
  }
}

/** What the statements of a list state, or null for a list of anything else. */
function statedQuantity(items: Shape): QuantityShape | null {
  if (items.type !== 'object' || !('basis' in items.properties)) return null;
  const value = items.properties.value;
  return value?.type === 'quantity' ? value : null;
}

/** What an item of a list is known by: its id or symbol, its value if it is a word or number, else its position. */
function itemKey(value: unknown, index: number): string {
  if (!isObject(value)) return String(value);
  const key = value.id ?? value.symbol;
  return typeof key === 'string' ? key : String(index + 1);
}

function joined(before: string, separator: string, key: string): string {
  return before === '' ? key : `${before}${separator}${key}`;
}

/** Text by which equal conditions are equal, whatever their order. */
export function conditionsKey(conditions: Conditions): string {
  return JSON.stringify(Object.entries(conditions).sort(([a], [b]) => (a < b ? -1 : 1)));
}
