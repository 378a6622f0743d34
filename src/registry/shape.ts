import type { Dimension } from '../units/dimension.ts';
import type { Kind } from './kind.ts';

/** What a reference may point at: a document of a kind, or a nozzle of the machine named beside it. */
export type ReferenceTarget = Kind | 'nozzle';

export interface ObjectShape {
  readonly type: 'object';
  readonly properties: Readonly<Record<string, Shape>>;
}

export interface QuantityShape {
  readonly type: 'quantity';
  readonly dimension: Dimension;
  readonly form: 'single' | 'range' | 'unit';
}

/** What stands at a place in a document: derived from the schemas, see `generated/shapes.ts`. */
export type Shape =
  | ObjectShape
  | QuantityShape
  | { readonly type: 'list'; readonly items: Shape }
  | { readonly type: 'reference'; readonly to: ReferenceTarget }
  | { readonly type: 'date' }
  | { readonly type: 'plain' };

/** Keys and list positions from the root of a document to a place in it. */
export type Path = readonly (string | number)[];

/** Shape at a path, or null where the schema knows no such place. */
export function shapeAt(shape: Shape, path: Path): Shape | null {
  let current: Shape | undefined = shape;
  for (const step of path) {
    if (current?.type === 'list' && typeof step === 'number') current = current.items;
    else if (current?.type === 'object') current = propertyShape(current, String(step)) ?? undefined;
    else return null;
  }
  return current ?? null;
}

/** Shape of a key of a mapping, or null where the schema does not know it. */
export function propertyShape(shape: ObjectShape, key: string): Shape | null {
  return Object.hasOwn(shape.properties, key) ? (shape.properties[key] ?? null) : null;
}

export interface Leaf<LeafShape extends Shape> {
  readonly path: Path;
  readonly shape: LeafShape;
  readonly value: unknown;
}

type LeavesOf<Type extends Shape['type']> = readonly Leaf<Extract<Shape, { type: Type }>>[];

/** All places of one type of shape that a document fills, in its order. */
export function leavesOf<Type extends Shape['type']>(
  type: Type,
  shape: Shape,
  value: unknown,
): LeavesOf<Type> {
  const known = recent.find((each) => each.value === value && each.type === type && each.shape === shape);
  // What was found for a type are leaves of that type.
  if (known !== undefined) return known.leaves as LeavesOf<Type>;
  const leaves: Leaf<Extract<Shape, { type: Type }>>[] = [];
  collectLeaves(type, shape, value, [], leaves);
  if (isObject(value)) recent = [{ type, shape, value, leaves }, ...recent.slice(0, kept - 1)];
  return leaves;
}

/** The rules look at one document after the other, each at its written and at its canonical value. */
const kept = 8;
let recent: readonly {
  readonly type: Shape['type'];
  readonly shape: Shape;
  readonly value: unknown;
  readonly leaves: LeavesOf<Shape['type']>;
}[] = [];

/** The path is one list that grows and shrinks on the way; what is found keeps a copy. */
function collectLeaves<Type extends Shape['type']>(
  type: Type,
  shape: Shape,
  value: unknown,
  path: (string | number)[],
  leaves: Leaf<Extract<Shape, { type: Type }>>[],
): void {
  if (isOfType(shape, type)) leaves.push({ path: [...path], shape, value });
  if (shape.type === 'list' && Array.isArray(value) && holds(shape.items, type)) {
    for (const [index, item] of value.entries()) into(index, shape.items, item);
  }
  if (shape.type === 'object' && isObject(value)) {
    for (const key of Object.keys(value)) {
      const inner = propertyShape(shape, key);
      if (inner !== null && holds(inner, type)) into(key, inner, value[key]);
    }
  }

  function into(step: string | number, inner: Shape, item: unknown): void {
    path.push(step);
    collectLeaves(type, inner, item, path, leaves);
    path.pop();
  }
}

const heldTypes = new WeakMap<Shape, ReadonlySet<Shape['type']>>();

/** Whether a shape, or anything within it, is of a type: most branches of a document have no date and no reference. */
function holds(shape: Shape, type: Shape['type']): boolean {
  const known = heldTypes.get(shape) ?? typesWithin(shape);
  heldTypes.set(shape, known);
  return known.has(type);
}

function typesWithin(shape: Shape): Set<Shape['type']> {
  const inner =
    shape.type === 'list' ? [shape.items] : shape.type === 'object' ? Object.values(shape.properties) : [];
  return new Set([shape.type, ...inner.flatMap((each) => [...typesWithin(each)])]);
}

/** Whether a shape is that of a statement. */
export function isStatementShape(shape: Shape): shape is ObjectShape {
  return shape.type === 'object' && 'basis' in shape.properties && 'value' in shape.properties;
}

function isOfType<Type extends Shape['type']>(
  shape: Shape,
  type: Type,
): shape is Extract<Shape, { type: Type }> {
  return shape.type === type;
}

/** Whether a value is a mapping, as opposed to a list, a scalar or nothing. */
export function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** JSON pointer (RFC 6901) of a path. */
export function toPointer(path: Path): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** Path of a JSON pointer (RFC 6901); digits are taken as list positions. */
export function fromPointer(pointer: string): Path {
  return pointer
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'))
    .map((step) => (/^(?:0|[1-9][0-9]*)$/.test(step) ? Number(step) : step));
}
