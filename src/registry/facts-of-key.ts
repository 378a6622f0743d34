import { bands, conditionBands, labels } from './generated/key-facts.ts';
import { shapes } from './generated/shapes.ts';
import { type FactTable, labelWithPart, type PlausibleBand, partOf } from './key-facts.ts';
import type { Kind } from './kind.ts';
import type { AnyProfile } from './profile.ts';
import { isObject, isStatementShape, type Path, type Shape } from './shape.ts';

/** What a table says of a place such as `hotEnds[].meltFlow`. */
export function factOf<Fact>(table: FactTable<Fact>, kind: Kind, place: string): Fact | undefined {
  return own(table[kind], place);
}

/** What a table says of the key that a path in a document leads to, its statements included. */
export function factAt<Fact>(table: FactTable<Fact>, kind: Kind, path: Path): Fact | undefined {
  const { place, inner } = keyAt(kind, path);
  const [part] = inner;
  return part === undefined || part === 'value' || part === 'interval'
    ? factOf(table, kind, place)
    : undefined;
}

/** The band of the key that a path in a document leads to, or of the condition of a statement. */
export function bandAt(kind: Kind, path: Path): PlausibleBand | undefined {
  const [part, condition] = keyAt(kind, path).inner;
  return part === 'at'
    ? own<PlausibleBand>(conditionBands, String(condition))
    : factAt<PlausibleBand>(bands, kind, path);
}

/** What a key is called, with the part that it belongs to: `melt flow of the hot end`. */
export function labelOf<OfKind extends Kind>(
  kind: OfKind,
  place: keyof (typeof labels)[OfKind] & string,
): string {
  return wordsFor(kind, place);
}

/** What the key is called that a path in a document leads to; the key itself where the schema has no word for it. */
export function labelAt(kind: Kind, path: Path): string {
  return wordsFor(kind, keyAt(kind, path).place);
}

function wordsFor(kind: Kind, place: string): string {
  return labelWithPart(place, (each) => factOf<string>(labels, kind, each)) ?? place;
}

/** The same with the id of the part that the key belongs to: `melt flow of hot end "main"`. */
export function labelIn({ kind, data }: AnyProfile, path: Path): string {
  const { place, path: key } = keyAt(kind, path);
  const part = partOf(place);
  const [label, partLabel] = [place, part ?? ''].map((each) => factOf<string>(labels, kind, each));
  const id = idOf(data, key.slice(0, key.findLastIndex((step) => typeof step === 'number') + 1));
  if (label === undefined || partLabel === undefined || id === null) return wordsFor(kind, place);
  return `${label} of ${partLabel} "${id}"`;
}

/** The id of the part at a path, null where it has none. */
function idOf(data: unknown, path: Path): string | null {
  let value = data;
  for (const step of [...path, 'id']) {
    value = Array.isArray(value) ? value[Number(step)] : isObject(value) ? own(value, String(step)) : null;
  }
  return typeof value === 'string' ? value : null;
}

/** A property of an object, none of those that all objects have. */
function own<Value>(values: Readonly<Record<string, Value>>, key: string): Value | undefined {
  return Object.hasOwn(values, key) ? values[key] : undefined;
}

interface KeyPlace {
  /** `hotEnds[].meltFlow`. */
  readonly place: string;
  /** The path of the key itself. */
  readonly path: Path;
  /** The path inside of a statement; empty outside of statements. */
  readonly inner: Path;
}

/** The place of the key that a path leads to: of the property for everything inside of its statements. */
export function keyAt(kind: Kind, path: Path): KeyPlace {
  let shape: Shape | undefined = shapes[kind];
  let place = '';
  for (const [index, step] of path.entries()) {
    if (shape?.type === 'list') {
      if (isStatementShape(shape.items))
        return { place, path: path.slice(0, index), inner: path.slice(index + 1) };
      place += '[]';
      shape = shape.items;
    } else {
      place += place === '' ? step : `.${step}`;
      shape = shape?.type === 'object' ? own(shape.properties, String(step)) : undefined;
    }
  }
  return { place, path, inner: [] };
}
