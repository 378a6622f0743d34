import { isAlias, isMap, isNode, isPair, isScalar, isSeq, type LineCounter, type Node } from 'yaml';
import { type Path, toPointer } from '../shape.ts';
import { locate, type YamlDocument } from './yaml-document.ts';
import { spanOfNode } from './yaml-span.ts';

const linesOfDocuments = new WeakMap<YamlDocument, ReadonlyMap<string, number>>();

/**
 * Line of a value, from 1, as `locate` finds it. Lines are kept where trees cannot be, since whoever writes many tables asks
 * the same profiles again and again.
 */
export function lineOfValue(document: YamlDocument, path: Path): number {
  const lines = linesOfDocuments.get(document) ?? valueLines(document);
  linesOfDocuments.set(document, lines);
  return lines.get(toPointer(path)) ?? locate(document, path, 'value').line;
}

function valueLines({ tree, lines }: YamlDocument): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  collect(tree.contents, null, [], lines, found);
  return found;
}

/** Notes a node and what is in it; of a key that stands twice the first one counts. */
function collect(
  value: unknown,
  key: Node | null,
  path: Path,
  lines: LineCounter,
  found: Map<string, number>,
): void {
  const pointer = toPointer(path);
  const node = isNode(value) && !isAlias(value) ? value : key;
  if (node === null || found.has(pointer)) return;
  if (path.length > 0) found.set(pointer, spanOfNode(node, lines).line);
  if (isSeq(value)) {
    for (const [index, item] of value.items.entries()) collect(item, null, [...path, index], lines, found);
  } else if (isMap(value)) {
    for (const item of value.items) {
      if (!isPair(item) || !isScalar(item.key)) continue;
      collect(item.value, item.key, [...path, String(item.key.value)], lines, found);
    }
  }
}
