import { fromPointer, isObject, type Path } from '../shape.ts';

/** What is left of a document, and where each place of it stood. */
interface Pruned {
  readonly rest: unknown;
  /** The path in the whole document of a path in the rest: list items before it may have gone. */
  readonly originalPath: (path: Path) => Path;
}

/**
 * A document without the places named, and without whatever `stillWrong` names in turn, until nothing is wrong: a copy
 * where anything has to go. Null when the document as a whole had to go.
 */
export function prune(
  value: unknown,
  pointers: readonly string[],
  stillWrong: (rest: unknown) => readonly string[],
): Pruned | null {
  if (pointers.length === 0) return { rest: value, originalPath: (path) => path };
  const copy: unknown = structuredClone(value);
  const positions: Positions = new Map();
  let wrong = pointers;
  while (wrong.length > 0) {
    if (wrong.includes('')) return null;
    const items: Path[] = [];
    for (const pointer of new Set(wrong)) {
      const path = fromPointer(pointer);
      if (typeof path.at(-1) === 'number') items.push(path);
      else remove(copy, path, positions);
    }
    // From the back, so that the positions of earlier list items stay true while later ones go. Keys shift nothing.
    for (const path of items.sort(laterFirst)) remove(copy, path, positions);
    wrong = stillWrong(copy);
  }
  return { rest: copy, originalPath: (path) => originalPath(copy, path, positions) };
}

/** For each list that has lost items, where those that are left stood before. */
type Positions = Map<readonly unknown[], number[]>;

function originalPath(root: unknown, path: Path, positions: Positions): Path {
  let parent: unknown = root;
  return path.map((step) => {
    const before = Array.isArray(parent) ? positions.get(parent) : undefined;
    parent = childOf(parent, step);
    return typeof step === 'number' ? (before?.[step] ?? step) : step;
  });
}

function laterFirst(a: Path, b: Path): number {
  for (let depth = 0; depth < Math.max(a.length, b.length); depth++) {
    const [left, right] = [a[depth], b[depth]];
    if (left === right) continue;
    if (left === undefined) return 1;
    if (right === undefined) return -1;
    if (typeof left === 'number' && typeof right === 'number') return right - left;
    return String(left) < String(right) ? 1 : -1;
  }
  return 0;
}

function remove(root: unknown, path: Path, positions: Positions): void {
  let parent: unknown = root;
  for (const step of path.slice(0, -1)) parent = childOf(parent, step);
  const last = path.at(-1);
  if (last === undefined) return;
  if (Array.isArray(parent) && typeof last === 'number') {
    const left = positions.get(parent) ?? [...parent.keys()];
    left.splice(last, 1);
    positions.set(parent, left);
    parent.splice(last, 1);
  } else if (isObject(parent)) delete parent[String(last)];
}

function childOf(parent: unknown, step: string | number): unknown {
  if (Array.isArray(parent)) return typeof step === 'number' ? parent[step] : undefined;
  return isObject(parent) && Object.hasOwn(parent, step) ? parent[String(step)] : undefined;
}
