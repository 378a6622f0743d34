import { fromPointer, isObject, type Path } from './shape.ts';

/**
 * A copy of a document without the places named, and without whatever `stillWrong` names in turn, until nothing is
 * wrong. Undefined when the document as a whole had to go.
 */
export function prune(
  value: unknown,
  pointers: readonly string[],
  stillWrong: (rest: unknown) => readonly string[],
): unknown {
  const copy: unknown = structuredClone(value);
  let wrong = pointers;
  while (wrong.length > 0) {
    if (wrong.includes('')) return undefined;
    // From the back, so that the positions of earlier list items stay true while later ones go.
    const paths = [...new Set(wrong)].map(fromPointer).sort(laterFirst);
    for (const path of paths) remove(copy, path);
    wrong = stillWrong(copy);
  }
  return copy;
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

function remove(root: unknown, path: Path): void {
  let parent: unknown = root;
  for (const step of path.slice(0, -1)) parent = childOf(parent, step);
  const last = path.at(-1);
  if (last === undefined) return;
  if (Array.isArray(parent) && typeof last === 'number') parent.splice(last, 1);
  else if (isObject(parent)) delete parent[String(last)];
}

function childOf(parent: unknown, step: string | number): unknown {
  if (Array.isArray(parent)) return typeof step === 'number' ? parent[step] : undefined;
  return isObject(parent) && Object.hasOwn(parent, step) ? parent[String(step)] : undefined;
}
