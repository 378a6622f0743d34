import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  type LineCounter,
  type Node,
  type ParsedNode,
  Scalar,
  visit,
  type YAMLError,
  type YAMLMap,
} from 'yaml';
import { quote } from '../../text/quote.ts';
import type { Span } from '../finding.ts';
import { spanOf, spanOfNode } from './yaml-span.ts';

/** What makes a text no YAML that a registry reads. */
export interface YamlProblem {
  readonly rule: 'syntax/yaml' | 'syntax/duplicate-key' | 'syntax/alias' | 'syntax/depth' | 'syntax/empty';
  readonly span: Span;
  readonly message: string;
  readonly help: string;
}

type Tree = Document.Parsed<ParsedNode>;

const noTags = {
  message: 'Tags (`!name`) are not read',
  help: 'Remove the tag; write text, numbers, true or false as they are.',
};

const noAliases = {
  message: 'Aliases (`*name`) are not read',
  help: 'Write the value out; profiles stay readable one line at a time.',
};

const unclosed = {
  message: 'What is opened here is not closed, or the lines inside it are not indented',
  help: 'Close a quote with the same quote, `[` with `]`, `{` with `}`.',
};

/** Units such as `[degF]` stand in brackets, which end a plain text within `{ }`. */
const bracketInText = {
  message: 'A bracket stands in text without quotes',
  help: "Put the text into quotes, for example `{value: '446 [degF]'}`.",
};

const problemOfCode: Readonly<Record<string, { message: string; help: string }>> = {
  TAB_AS_INDENT: {
    message: 'A tab stands where YAML needs spaces',
    help: 'Indent with spaces, two a level; most editors can convert tabs.',
  },
  MULTIPLE_DOCS: {
    message: 'The file holds more than one document',
    help: 'Keep one document a file; remove the line `---` and move the rest to a file of its own.',
  },
  BAD_INDENT: {
    message: 'The indentation does not fit the lines around it',
    help: 'Indent keys of one mapping alike, two spaces a level.',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    message: 'A key with its value stands where a single value is expected',
    help: 'Check the indentation of this line and the next; put text that holds a colon into quotes.',
  },
  MISSING_CHAR: {
    message: 'A character is missing',
    help: 'Check the quotes, brackets and the colon of this line and the one before.',
  },
  MULTILINE_IMPLICIT_KEY: {
    message: 'This line has no colon, so that it is read as one text with the next line',
    help: 'Put a colon and a space behind the key, or remove the line; a line of notes begins with `#`.',
  },
  TAG_RESOLVE_FAILED: noTags,
  NON_STRING_KEY: { message: 'A key must be text', help: 'Write the key as a plain word.' },
};

const noKey = {
  message: 'This text is no key with a value, so that nothing below it can be read',
  help: 'Remove it if it has slipped in, or put a colon and a space behind the key; a line of notes begins with `#`.',
};
const pastTheEnd = {
  message: 'The document has ended above this line',
  help: 'Indent the line like its neighbours, or remove the bracket, quote or `...` that ends the document too early.',
};

/** What makes a parsed text unfit for a registry; of several complaints of the parser about one line, the first. */
export function yamlProblems(tree: Tree, lines: LineCounter): YamlProblem[] {
  const seen = new Set<number>();
  return [...parserProblems(tree, lines), ...treeProblems(tree, lines)].filter(({ rule, span }) => {
    if (rule !== 'syntax/yaml') return true;
    const first = !seen.has(span.line);
    seen.add(span.line);
    return first;
  });
}

/** The complaints of the parser in our words, up to one that all that follows is the echo of. */
function parserProblems(tree: Tree, lines: LineCounter): YamlProblem[] {
  const problems: YamlProblem[] = [];
  for (const error of [...tree.warnings, ...tree.errors]) {
    const opening = openingOf(error, tree);
    if (opening !== null) {
      problems.push({ rule: 'syntax/yaml', span: spanOf(opening, opening + 1, lines), ...unclosed });
      return problems;
    }
    if (isPastTheEnd(error)) return problems.length > 0 ? problems : [endedEarly(error, tree, lines)];
    const known = isBracketInText(error) ? bracketInText : problemOfCode[error.code];
    problems.push({
      rule: 'syntax/yaml',
      span: spanOf(...error.pos, lines),
      message: known?.message ?? `This is not valid YAML: ${error.message}`,
      help: known?.help ?? 'Compare the line with its neighbours: indentation, quotes, brackets, colons.',
    });
  }
  return problems;
}

/** Where the parser takes the document for ended, it complains about each word of the rest. */
function isPastTheEnd({ message }: YAMLError): boolean {
  return /^Unexpected \S+ token in YAML stream/.test(message);
}

function endedEarly({ pos }: YAMLError, { contents }: Tree, lines: LineCounter): YamlProblem {
  return isScalar(contents)
    ? { rule: 'syntax/yaml', span: spanOfNode(contents, lines), ...noKey }
    : { rule: 'syntax/yaml', span: spanOf(...pos, lines), ...pastTheEnd };
}

function isBracketInText({ message }: YAMLError): boolean {
  return /^Unexpected flow-(seq|map)-start at node end/.test(message);
}

/** Where the quote or bracket stands that the parser has found open at the end of its text; null for other errors. */
function openingOf(error: YAMLError, tree: Tree): number | null {
  const endsThere = (node: Node) => node.range?.[1] === error.pos[0];
  if (/^Missing closing ["']quote/.test(error.message))
    return startOf(lastNode(tree, (node) => isScalar(node) && isQuoted(node) && endsThere(node)));
  if (/^Flow .* end with a [\]}]$/.test(error.message))
    return startOf(lastNode(tree, (node) => isFlow(node) && endsThere(node)));
  return null;
}

function startOf(node: Node | null): number | null {
  return node?.range?.[0] ?? null;
}

function isQuoted({ type }: Scalar): boolean {
  return type === Scalar.QUOTE_DOUBLE || type === Scalar.QUOTE_SINGLE;
}

function isFlow(node: Node): boolean {
  return !isScalar(node) && 'flow' in node && node.flow === true;
}

/** The innermost of the nodes wanted, or the last one in the text. */
function lastNode(tree: Tree, wanted: (node: Node) => boolean): Node | null {
  let found: Node | null = null;
  visit(tree, {
    Node(_, node) {
      if (wanted(node)) found = node;
    },
  });
  return found;
}

/** What the parser lets pass and a registry does not: aliases, tags, a key that stands twice. */
function treeProblems(tree: Tree, lines: LineCounter): YamlProblem[] {
  return [...nodesOf(tree.contents)].flatMap((node) => {
    if (isAlias(node)) return [{ rule: 'syntax/alias', span: spanOfNode(node, lines), ...noAliases }];
    const tagged: YamlProblem[] =
      node.tag === undefined ? [] : [{ rule: 'syntax/yaml', span: spanOfNode(node, lines), ...noTags }];
    return isMap(node) ? [...tagged, ...repeatedKeys(node).map((key) => duplicateKey(key, lines))] : tagged;
  });
}

/** The nodes in the order of the text. The parser's own visitor makes a list for each of them. */
function* nodesOf(node: unknown): Generator<Node> {
  if (!isNode(node)) return;
  yield node;
  if (!isCollection(node)) return;
  for (const item of node.items) {
    yield* nodesOf(isPair(item) ? item.key : item);
    if (isPair(item)) yield* nodesOf(item.value);
  }
}

interface RepeatedKey {
  /** Where it stands for the second time. */
  readonly again: Scalar;
  readonly times: number;
}

/** The parser compares each key with all before it, which takes minutes for a hostile file; a map does not. */
function repeatedKeys(map: YAMLMap): RepeatedKey[] {
  const known = new Map<unknown, { again: Scalar | null; times: number }>();
  for (const { key } of map.items) {
    if (!isScalar(key)) continue;
    const one = known.get(key.value);
    if (one === undefined) known.set(key.value, { again: null, times: 1 });
    else {
      one.again ??= key;
      one.times += 1;
    }
  }
  return [...known.values()].flatMap(({ again, times }) => (again === null ? [] : [{ again, times }]));
}

function duplicateKey({ again, times }: RepeatedKey, lines: LineCounter): YamlProblem {
  return {
    rule: 'syntax/duplicate-key',
    span: spanOfNode(again, lines),
    message: `The key "${quote(again.value)}" stands ${times === 2 ? 'twice' : `${times} times`} in the same mapping`,
    help: 'Keep one of them; to state several values, list them as statements under one key.',
  };
}
