import { shapes } from '../registry/generated/shapes.ts';
import type { Kind } from '../registry/kind.ts';
import { isObject, type Path, type Shape } from '../registry/shape.ts';
import { wordsOf } from '../text/words.ts';
import type { Dimension } from '../units/dimension.ts';
import { type Column, quantity } from './column.ts';

/** A quantity that documents of a kind state once, as a plain fact. */
interface QuantityField {
  readonly path: Path;
  readonly dimension: Dimension;
}

/** Parts of documents that hold more than facts of their own. */
const apart: ReadonlySet<string> = new Set(['settings', 'observations']);

/** The part that says under what a trial was run; it gives no name to what it holds. */
const conditionsKey = 'conditions';

/** A column for every quantity that documents of a kind state as a plain fact, as the schema has them. */
export function factColumns<Row>(kind: Kind, dataOf: (row: Row) => unknown): Column<Row>[] {
  return fieldsIn(shapes[kind], []).map(({ path, dimension }) => {
    const key = keyOf(path);
    return quantity(key, dimension, `${wordsOf(key)}`, (row) => numberAt(dataOf(row), path));
  });
}

/** The conditions that a trial may state, by name. */
export function conditionFields(): ReadonlyMap<string, Dimension> {
  const fields = fieldsIn(shapes.trial, []).filter(({ path }) => path[0] === conditionsKey);
  return new Map(fields.map(({ path, dimension }) => [keyOf(path), dimension]));
}

function fieldsIn(shape: Shape, path: Path): QuantityField[] {
  if (shape.type === 'quantity') return shape.form === 'single' ? [{ path, dimension: shape.dimension }] : [];
  if (shape.type !== 'object') return [];
  return Object.entries(shape.properties)
    .filter(([key]) => !apart.has(key))
    .flatMap(([key, inner]) => fieldsIn(inner, [...path, key]));
}

/** `scaleResolution` for `scale.resolution`. */
function keyOf(path: Path): string {
  const [first = '', ...rest] = path.filter((step) => step !== conditionsKey).map(String);
  return first + rest.map((step) => step.charAt(0).toUpperCase() + step.slice(1)).join('');
}

function numberAt(data: unknown, path: Path): number | null {
  let value = data;
  for (const step of path) value = isObject(value) ? value[step] : undefined;
  return typeof value === 'number' ? value : null;
}
