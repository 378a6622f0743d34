import { isMap, isNode, isScalar, isSeq } from 'yaml';
import type { AnyProfile } from '../../src/registry/profile.ts';
import type { Path } from '../../src/registry/shape.ts';
import { placeAt, type YamlDocument } from '../../src/registry/yaml/yaml-document.ts';
import { lineEnd } from '../../src/text/line-end.ts';

type Span = readonly [start: number, end: number];

/** The key with its value and the comma or line that it takes; null where it opens a mapping on lines of its own. */
export function spanOfPair({ source: { text }, yaml }: AnyProfile, path: Path): Span | null {
  const { key, value } = placeAt(yaml, path) ?? {};
  if (!isNode(key) || !isNode(value) || !key.range || !value.range) return null;
  const room = /(?:,\s*|\n[ ]*)$/.exec(text.slice(0, key.range[0]))?.[0];
  if (room !== undefined) return [key.range[0] - room.length, value.range[1]];
  const comma = /^,\s*/.exec(text.slice(value.range[1]))?.[0];
  return comma === undefined ? null : [key.range[0], value.range[1] + comma.length];
}

/** The lines of an item of a list, or of the whole key where it is the only one; null where the list stands on one line. */
export function spanOfItem(text: string, yaml: YamlDocument, path: Path): Span | null {
  const list = placeAt(yaml, path.slice(0, -1));
  const item = placeAt(yaml, path)?.value;
  if (!isSeq(list?.value) || list.value.flow || !isNode(item) || !item.range) return null;
  const only = list.value.items.length === 1 && isScalar(list.key) ? list.key : null;
  const from = only?.range?.[0] ?? item.range[0];
  const start = text.lastIndexOf('\n', from - 1) + 1;
  return [start, lineEnd(text, item.range[1])];
}

/** The lines of a key of the document with all that is in it; null where there is no such key. */
export function spanOfRootKey(text: string, yaml: YamlDocument, key: string): Span | null {
  const place = placeAt(yaml, [key]);
  if (!isNode(place?.key) || !isNode(place.value) || !place.key.range || !place.value.range) return null;
  return [place.key.range[0], lineEnd(text, place.value.range[1])];
}

/** Paths of all keys of a document that are plain words. */
export function keysOf(node: unknown, path: Path = []): Path[] {
  if (isSeq(node)) return node.items.flatMap((item, index) => keysOf(item, [...path, index]));
  if (!isMap(node)) return [];
  return node.items.flatMap(({ key, value }) => {
    if (!isScalar(key) || typeof key.value !== 'string') return [];
    const own = [...path, key.value];
    return [own, ...keysOf(value, own)];
  });
}
