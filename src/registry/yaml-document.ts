import {
  type Document,
  isAlias,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type ParsedNode,
  parseDocument,
  visit,
  type YAMLError,
} from 'yaml';
import { type Span, wholeFile } from './finding.ts';
import type { Path } from './shape.ts';

/** A YAML file with its tree, its plain value and a way from a path to a place in the text. */
export interface YamlDocument {
  readonly tree: Document.Parsed<ParsedNode>;
  readonly lines: LineCounter;
}

export interface YamlProblem {
  readonly rule: 'syntax/yaml' | 'syntax/duplicate-key' | 'syntax/alias' | 'syntax/depth' | 'syntax/empty';
  readonly span: Span;
  readonly message: string;
  readonly help: string;
}

/** Deepest nesting that any kind of document needs is 7; more is a mistake or an attack. */
const deepestNesting = 24;

const problemOfCode: Readonly<Record<string, { message: string; help: string }>> = {
  TAB_AS_INDENT: {
    message: 'A tab stands where YAML wants spaces',
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
  MISSING_CHAR: {
    message: 'A character is missing',
    help: 'Check the quotes, brackets and the colon of this line and the one before.',
  },
  TAG_RESOLVE_FAILED: {
    message: 'Tags (`!name`) are not read',
    help: 'Remove the tag; write text, numbers, true or false as they are.',
  },
  NON_STRING_KEY: { message: 'A key must be text', help: 'Write the key as a plain word.' },
};

/** Reads a text as one YAML 1.2 document; problems are returned, never thrown. */
export function readYaml(text: string): { document: YamlDocument | null; problems: readonly YamlProblem[] } {
  const lines = new LineCounter();
  try {
    const tree = parseDocument(text, {
      lineCounter: lines,
      version: '1.2',
      schema: 'core',
      merge: false,
      prettyErrors: false,
      stringKeys: true,
      uniqueKeys: true,
    });
    const problems = [...tree.errors, ...tree.warnings].map((error) => syntaxProblem(error, lines, text));
    problems.push(...treeProblems(tree, lines));
    if (problems.length === 0 && tree.contents === null) problems.push(emptyProblem);
    const unusable = problems.some(({ rule }) => rule !== 'syntax/duplicate-key');
    return { document: unusable ? null : { tree, lines }, problems };
  } catch (error) {
    // The parser recurses, so hostile nesting ends in an exhausted stack; anything else is a bug.
    if (!(error instanceof RangeError)) throw error;
    return { document: null, problems: [depthProblem(wholeFile)] };
  }
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

function syntaxProblem(error: YAMLError, lines: LineCounter, text: string): YamlProblem {
  const span = spanOf(error.pos[0], Math.max(error.pos[1], error.pos[0]), lines);
  if (error.code === 'DUPLICATE_KEY') {
    const key = text.slice(error.pos[0], error.pos[1]).split(':')[0]?.trim() ?? '';
    return {
      rule: 'syntax/duplicate-key',
      span,
      message: `The key "${key}" stands twice in the same mapping`,
      help: 'Keep one of them; to state several values, list them as statements under one key.',
    };
  }
  const tabbed = error.message.toLowerCase().includes('tab');
  const known = problemOfCode[tabbed ? 'TAB_AS_INDENT' : error.code];
  return {
    rule: 'syntax/yaml',
    span,
    message: known?.message ?? `This is not valid YAML: ${firstLine(error.message)}`,
    help: known?.help ?? 'Compare the line with its neighbours: indentation, quotes, brackets, colons.',
  };
}

function firstLine(message: string): string {
  return message.split('\n')[0] ?? message;
}

function treeProblems(tree: Document.Parsed, lines: LineCounter): YamlProblem[] {
  const problems: YamlProblem[] = [];
  visit(tree, {
    Alias(_, node) {
      problems.push({
        rule: 'syntax/alias',
        span: spanOfNode(node, lines),
        message: 'Aliases (`*name`) are not read',
        help: 'Write the value out; profiles stay readable one line at a time.',
      });
    },
    Collection(_, node, ancestors) {
      if (ancestors.length <= 2 * deepestNesting) return undefined;
      problems.push(depthProblem(spanOfNode(node, lines)));
      return visit.BREAK;
    },
  });
  return problems;
}

/** Plain value of a document: mappings, lists, text, numbers, true, false, null. */
export function plainValue(document: YamlDocument): unknown {
  return document.tree.toJS({ maxAliasCount: 0 });
}

/**
 * Span of a place in the text. A place that does not exist points at its nearest existing parent's key;
 * the root points at the first character.
 */
export function locate(document: YamlDocument, path: Path, part: 'key' | 'value'): Span {
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
      const pair = value.items.find((item) => isPair(item) && isScalar(item.key) && item.key.value === step);
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

function spanOfNode(node: Node, lines: LineCounter): Span {
  const [start, end] = node.range ?? [0, 0];
  return spanOf(start, end, lines);
}

function spanOf(start: number, end: number, lines: LineCounter): Span {
  const from = lines.linePos(start);
  const to = lines.linePos(Math.max(start, end));
  return {
    line: Math.max(1, from.line),
    column: Math.max(1, from.col),
    endLine: Math.max(1, to.line),
    endColumn: Math.max(1, to.col),
  };
}
