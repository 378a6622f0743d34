import { isMap, isPair, isScalar, isSeq, type Scalar } from 'yaml';
import { shapes } from '../registry/generated/shapes.ts';
import { isKind, type Kind } from '../registry/kind.ts';
import { largestFile } from '../registry/registry-file.ts';
import { isObject, type Path, type ReferenceTarget, shapeAt } from '../registry/shape.ts';
import { deepestNesting, treeWithin } from '../registry/yaml/yaml-document.ts';

/** A place in a text where the id of something in the registry stands, or is being typed. */
export interface ReferencePlace {
  readonly to: ReferenceTarget;
  /** Offsets of what stands there, without quotes. */
  readonly start: number;
  readonly end: number;
  /** Kind and id of the document; an empty id where it has none yet. */
  readonly kind: Kind;
  readonly id: string;
  /** The machine whose nozzle is meant, if it is named beside it. */
  readonly machine: string | null;
}

/** Stands for what is about to be typed, so that an empty place has a value and a path. */
const marker = 'zqz';

/**
 * The reference at an offset of a text, which may be unfinished or broken elsewhere; null where no id belongs. The kind by
 * the path counts where the text does not name one.
 */
export function referenceAt(text: string, offset: number, kindByPath: Kind | null): ReferencePlace | null {
  if (text.length > largestFile) return null;
  const marked = text.slice(0, offset) + marker + text.slice(offset);
  const { tree } = treeWithin(marked, deepestNesting);
  if (tree === null) return null;
  const { contents } = tree;
  const found = scalarAt(contents, offset, []);
  const root = valuesOf(contents);
  const kind = isKind(root.kind) ? root.kind : kindByPath;
  if (found === null || kind === null) return null;
  const shape = shapeAt(shapes[kind], found.path);
  if (shape?.type !== 'reference') return null;
  const [from, to] = contentRange(found.scalar);
  const machine =
    found.beside.machine ?? (kind === 'trial' && found.path[0] === 'fieldNotes' ? root.machine : null);
  return {
    to: shape.to,
    start: from,
    end: to - marker.length,
    kind,
    id: typeof root.id === 'string' ? root.id : '',
    machine: typeof machine === 'string' ? machine : null,
  };
}

interface FoundScalar {
  readonly scalar: Scalar;
  readonly path: Path;
  /** The plain values of the mapping that it stands in. */
  readonly beside: Readonly<Record<string, unknown>>;
}

/** The value that an offset lies in, with the way to it. */
function scalarAt(
  node: unknown,
  offset: number,
  path: Path,
  beside: Readonly<Record<string, unknown>> = {},
): FoundScalar | null {
  if (isScalar(node)) return isIn(node, offset) ? { scalar: node, path, beside } : null;
  if (isSeq(node)) {
    const index = node.items.findIndex((item) => isIn(item, offset));
    return index < 0 ? null : scalarAt(node.items[index], offset, [...path, index]);
  }
  if (!isMap(node)) return null;
  const pair = node.items.find((each) => isPair(each) && isIn(each.value, offset));
  if (pair === undefined || !isScalar(pair.key)) return null;
  return scalarAt(pair.value, offset, [...path, String(pair.key.value)], valuesOf(node));
}

function isIn(node: unknown, offset: number): boolean {
  const range: unknown = isObject(node) ? node.range : null;
  if (!Array.isArray(range)) return false;
  return range[0] <= offset && offset <= range[1];
}

/** The scalars of a mapping by their keys. */
function valuesOf(node: unknown): Readonly<Record<string, unknown>> {
  if (!isMap(node)) return {};
  return Object.fromEntries(
    node.items.flatMap(({ key, value }) =>
      isScalar(key) && isScalar(value) ? [[String(key.value), value.value] as const] : [],
    ),
  );
}

function contentRange({ range, type }: Scalar): readonly [number, number] {
  const [start, end] = range ?? [0, 0];
  const isQuoted = type === 'QUOTE_DOUBLE' || type === 'QUOTE_SINGLE';
  return isQuoted ? [start + 1, end - 1] : [start, end];
}
