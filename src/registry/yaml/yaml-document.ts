import {
  Composer,
  type Document,
  isAlias,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  type LineCounter,
  type Node,
  type Pair,
  type ParsedNode,
  parseDocument,
  type YAMLMap,
  YAMLParseError,
} from 'yaml';
import { type Span, wholeFile } from '../finding.ts';
import { isObject, type Path } from '../shape.ts';
import { conflictProblems } from './merge-conflict.ts';
import { plainYaml } from './plain-yaml.ts';
import { rootKeysOf } from './root-keys.ts';
import { shallowTokens } from './yaml-nesting.ts';
import { type YamlProblem, yamlProblems } from './yaml-problem.ts';
import { linesOf, spanOfNode } from './yaml-span.ts';

type Tree = Document.Parsed<ParsedNode>;

/** A YAML file with its plain value, its tree and a way from a path to a place in the text. */
export interface YamlDocument {
  /** Mappings, lists, text, numbers, true, false, null. */
  readonly value: unknown;
  /** Made when it is first asked for: most files are never found fault with. */
  readonly tree: Tree;
  readonly lines: LineCounter;
  /** Where the outermost keys stand, if that can be told without the tree. */
  readonly rootKeys: ReadonlyMap<string, Span> | null;
}

/** Deepest nesting that any kind of document needs is 7; more is a mistake or an attack. */
export const deepestNesting = 24;

/** Reads a text as one YAML 1.2 document; problems are returned, never thrown. */
export function readYaml(text: string): { document: YamlDocument | null; problems: readonly YamlProblem[] } {
  const plain = plainYaml(text, deepestNesting);
  if (plain !== null && plain.value !== null)
    return { document: documentOfValue(plain.value, text), problems: [] };
  const { tree, tooDeep } = treeWithin(text, deepestNesting);
  if (tooDeep !== null) return { document: null, problems: [depthProblem(tooDeep)] };
  const problems = conflictProblems(text) ?? yamlProblems(tree, linesOf(text));
  if (problems.length === 0 && tree.contents === null) problems.push(emptyProblem);
  const unusable = problems.some(({ rule }) => rule !== 'syntax/duplicate-key');
  if (unusable) return { document: null, problems };
  return { document: documentOf(tree.toJS({ maxAliasCount: 0 }), () => tree, text), problems };
}

/** A document whose value is known already: that of a text which the fast reader took. */
export function documentOfValue(value: unknown, text: string): YamlDocument {
  return documentOf(value, () => parsedTree(text), text);
}

function documentOf(value: unknown, treeOf: () => Tree, text: string): YamlDocument {
  const key = {};
  let lines: LineCounter | null = null;
  let rootKeys: ReadonlyMap<string, Span> | null | undefined;
  return {
    value,
    get rootKeys() {
      if (rootKeys === undefined) rootKeys = isObject(value) ? rootKeysOf(text, value) : null;
      return rootKeys;
    },
    get tree() {
      const known = recentTrees.find((each) => each.key === key);
      if (known !== undefined) return known.tree;
      const tree = treeOf();
      recentTrees = [{ key, tree }, ...recentTrees.slice(0, keptTrees - 1)];
      return tree;
    },
    get lines() {
      lines ??= linesOf(text);
      return lines;
    },
  };
}

/** A tree takes a hundred times the room of its text, so that a large registry cannot keep all of them. */
const keptTrees = 4;
let recentTrees: readonly { readonly key: object; readonly tree: Tree }[] = [];

const readerOptions = {
  version: '1.2',
  schema: 'core',
  merge: false,
  prettyErrors: false,
  stringKeys: true,
  uniqueKeys: false,
} as const;

/** The tree of the full reader, whatever is wrong with the text, unless it nests deeper than so many levels somewhere. */
export function treeWithin(
  text: string,
  deepest: number,
): { readonly tree: Tree; readonly tooDeep: null } | { readonly tree: null; readonly tooDeep: Span } {
  let deep: Span | null = null;
  const tokens = shallowTokens(text, deepest, (place) => {
    deep = place;
  });
  const [tree, second] = new Composer<ParsedNode>(readerOptions).compose(tokens, true, text.length);
  if (deep !== null || tree === undefined) return { tree: null, tooDeep: deep ?? wholeFile };
  if (second !== undefined)
    tree.errors.push(new YAMLParseError([second.range[0], second.range[1]], 'MULTIPLE_DOCS', ''));
  return { tree: tree as Tree, tooDeep: null };
}

/** The tree of a text that nests no deeper than a reader can follow. */
export function parsedTree(text: string): Tree {
  return parseDocument(text, readerOptions);
}

const emptyProblem: YamlProblem = {
  rule: 'syntax/empty',
  span: wholeFile,
  message: 'The file is empty',
  help: 'Start it with `kind:` and `id:`.',
};

function depthProblem(span: Span): YamlProblem {
  return {
    rule: 'syntax/depth',
    span,
    message: `The document is nested deeper than ${deepestNesting} levels`,
    help: 'No kind of profile needs more than 7; flatten it.',
  };
}

/**
 * Span of a place in the text. A place that does not exist points at its nearest existing parent's key;
 * the root points at the first character.
 */
export function locate(document: YamlDocument, path: Path, part: 'key' | 'value'): Span {
  const [root = ''] = path;
  const atRoot = path.length === 1 && part === 'key' ? document.rootKeys?.get(String(root)) : undefined;
  if (atRoot !== undefined) return atRoot;
  const { lines } = document;
  for (let length = path.length; length > 0; length--) {
    const place = placeAt(document, path.slice(0, length));
    if (place === null) continue;
    const wanted =
      part === 'key' || length < path.length ? (place.key ?? place.value) : (place.value ?? place.key);
    if (wanted !== null) return spanOfNode(wanted, lines);
  }
  return wholeFile;
}

/** Key (for a mapping) and value node at a path, or null where the document has no such place. */
export function placeAt(document: YamlDocument, path: Path): { key: Node | null; value: Node | null } | null {
  let value: unknown = document.tree.contents;
  let key: Node | null = null;
  for (const step of path) {
    if (isMap(value)) {
      const pair = pairsOf(value).get(step);
      if (pair === undefined) return null;
      key = isNode(pair.key) ? pair.key : null;
      value = pair.value;
    } else if (isSeq(value) && typeof step === 'number' && step < value.items.length) {
      key = null;
      value = value.items[step];
    } else return null;
  }
  return { key, value: isNode(value) && !isAlias(value) ? value : null };
}

const pairsByMap = new WeakMap<YAMLMap, ReadonlyMap<unknown, Pair>>();

/** The first pair of each key. */
function pairsOf(map: YAMLMap): ReadonlyMap<unknown, Pair> {
  const known = pairsByMap.get(map);
  if (known !== undefined) return known;
  const pairs = new Map<unknown, Pair>();
  for (const item of map.items) {
    if (isPair(item) && isScalar(item.key) && !pairs.has(item.key.value)) pairs.set(item.key.value, item);
  }
  pairsByMap.set(map, pairs);
  return pairs;
}
