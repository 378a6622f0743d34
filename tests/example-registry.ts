import { parse } from 'yaml';
import { compareText } from '../src/registry/finding.ts';
import { shapes } from '../src/registry/generated/shapes.ts';
import { expectedPath, type Kind, kindFolders } from '../src/registry/kind.ts';
import type { RuleExample } from '../src/rules/engine/rule.ts';
import { sampleTexts } from './sample-texts.ts';

/** The sample registry to which the keys of an example of a rule are applied. */
export interface ExampleRegistry {
  readonly texts: ReadonlyMap<string, string>;
  /** The one file that the example has changed or added, from the root of the registry. */
  readonly file: string;
  /** The line of the example, counted from 1, that stands in a line of the file; null where the line is the file's own. */
  readonly exampleLine: (line: number) => number | null;
}

export function exampleRegistry({ kind, copied }: RuleExample, keys: string): ExampleRegistry {
  const texts = sampleTexts();
  const [path = ''] = [...texts.keys()].filter((each) => isProfileOf(kind, each)).sort(compareText);
  const blocks = withKeys(texts.get(path) ?? '', keys, kind);
  const text = blocks.map((block) => block.text).join('');
  const file = copied ? pathOfId(text, kind) : path;
  texts.set(file, text);
  return { texts, file, exampleLine: (line) => blocks.flatMap(linesOf)[line - 1] ?? null };
}

function isProfileOf(kind: Kind, path: string): boolean {
  return path.startsWith(`${kindFolders[kind]}/`) && path.endsWith('.yaml');
}

function pathOfId(text: string, kind: Kind): string {
  const { id, date } = parse(text) as { id: string; date?: string };
  return expectedPath(kind, id, date?.slice(0, 4) ?? '');
}

/** A key at the root of a profile with its lines. */
interface Block {
  readonly key: string;
  readonly text: string;
  /** Its first line in the example; null where it is the profile's own. */
  readonly exampleLine: number | null;
}

/** For each line of a block the line of the example that it is. */
function linesOf({ text, exampleLine }: Block): (number | null)[] {
  const lines = text.split('\n').slice(0, -1);
  return lines.map((_, index) => (exampleLine === null ? null : exampleLine + index));
}

/**
 * Replaces keys at the root of a profile as text. A new key stands where the schema has it, unless the example lists its
 * keys in another order than the schema: then they replace the first of them as they stand.
 */
function withKeys(profile: string, keys: string, kind: Kind): readonly Block[] {
  const order = Object.keys(shapes[kind].properties);
  const rank = ({ key }: Block) => order.indexOf(key);
  const replaced = numbered(blocksOf(`${keys}\n`));
  const kept = blocksOf(profile).filter(({ key }) => !replaced.some((block) => block.key === key));
  const inOrder = replaced.every((block, index) => index === 0 || rank(replaced[index - 1]!) <= rank(block));
  const first = Math.min(...replaced.map(rank));
  return inOrder
    ? [...kept, ...replaced].sort((a, b) => rank(a) - rank(b))
    : [...kept.filter((b) => rank(b) < first), ...replaced, ...kept.filter((b) => rank(b) > first)];
}

/** The keys at the root of a text with their lines; what stands above the first key goes with it. */
function blocksOf(text: string): Block[] {
  const parts = text.split(/^(?=[a-zA-Z]\w*:)/m);
  const header = parts[0]?.startsWith('#') ? parts.shift() : '';
  return parts.map((part, index) => ({
    key: part.slice(0, part.indexOf(':')),
    text: (index === 0 ? header : '') + part,
    exampleLine: null,
  }));
}

function numbered(blocks: readonly Block[]): Block[] {
  let line = 1;
  return blocks.map((block) => {
    const exampleLine = line;
    line += linesOf(block).length;
    return { ...block, exampleLine };
  });
}
