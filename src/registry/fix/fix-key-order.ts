import { shapes } from '../generated/shapes.ts';
import type { Kind } from '../kind.ts';
import { sameValue } from '../same-value.ts';
import { isObject } from '../shape.ts';
import { readYaml, type YamlDocument } from '../yaml/yaml-document.ts';
import { type KeyBlock, keyBlocks } from './key-blocks.ts';

/** A document whose keys stand in another order than in its schema, and its text in the right one. */
interface Reordering {
  /** The first key that stands too late, and one before it that belongs after it. */
  readonly key: string;
  readonly after: string;
  readonly text: string;
}

/**
 * Puts the keys at the root of a document into the order of the schema of its kind. Comments go with the key below
 * them. Null when they are in order, or when the text does not allow to move them without changing what is read.
 */
export function reorderKeys(text: string, yaml: YamlDocument, kind: Kind): Reordering | null {
  if (isOrdered(yaml.value, kind)) return null;
  const layout = keyBlocks(text, yaml);
  if (layout === null) return null;
  const ranked = withRanks(layout.blocks, Object.keys(shapes[kind].properties));
  const late = ranked.find(({ rank }, index) => ranked.slice(0, index).some((other) => other.rank > rank));
  const displaced = late === undefined ? undefined : ranked.find(({ rank }) => rank > late.rank);
  if (late === undefined || displaced === undefined) return null;
  const ordered = [...ranked].sort((a, b) => a.rank - b.rank);
  const reordered = layout.header + ordered.map(({ block }) => block.text).join('') + layout.footer;
  if (!readsTheSame(reordered, yaml)) return null;
  return { key: late.block.key, after: displaced.block.key, text: reordered };
}

/** Most documents are in order, which their value tells without the tree: keys keep the order of the text. */
function isOrdered(value: unknown, kind: Kind): boolean {
  const order = Object.keys(shapes[kind].properties);
  const places = Object.keys(isObject(value) ? value : {})
    .map((key) => order.indexOf(key))
    .filter((place) => place >= 0);
  return places.every((place, index) => index === 0 || place >= (places[index - 1] ?? place));
}

/** A key that the schema does not know stays behind the one that it follows. */
function withRanks(
  blocks: readonly KeyBlock[],
  order: readonly string[],
): { readonly block: KeyBlock; readonly rank: number }[] {
  let rank = 0;
  return blocks.map((block) => {
    const known = order.indexOf(block.key);
    if (known >= 0) rank = known;
    return { block, rank };
  });
}

function readsTheSame(text: string, before: YamlDocument): boolean {
  const after = readYaml(text);
  return (
    after.document !== null && after.problems.length === 0 && sameValue(after.document.value, before.value)
  );
}
