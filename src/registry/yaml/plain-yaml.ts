import { load } from 'js-yaml';

/** A value that the fast reader vouches for. */
interface PlainYaml {
  readonly value: unknown;
}

/**
 * What sends a text to the full reader: tags, aliases, and anchors but the plainest; directives, document marks, empty keys and keys with
 * `? `; merge keys, keys that mean something to JavaScript and endless numbers; lists without an indentation of their own;
 * tabs, line ends and invisible characters that readers take differently.
 */
const unusual = [
  /(?:^|[\s[\]{},:?-])(?:[*!]|&(?!\w+ \w))(?=\S)/m,
  /^(?:%|---|\.\.\.)/m,
  /(?:^|[\s[{,-])[?:](?:[\s[\]{},"']|$)/m,
  /<<|__proto__|(?<![\w.])[\d._]+[eE][-+]?\d{3}/,
  // Lists that are indented as their key is: what stands behind an item on its line is read as the next key.
  /^( *)(?![ #-])[^\n]*:[ \t]*(?:#[^\n]*)?\n(?:[ \t]*(?:#[^\n]*)?\n)*\1- /m,
  /^( *)- [^\n]*:[ \t]*(?:#[^\n]*)?\n(?:[ \t]*(?:#[^\n]*)?\n)*\1 {2}- /m,
  /^ *- +- /m,
  /\r(?!\n)|[^\n\r\x20-\x7e\u00a1-\u1fff\u2030-\u205e\u2070-\u20cf\u2100-\u218f]/u,
];

/**
 * Reads a text of block and flow collections and scalars, about ten times faster than the full reader; null where the text
 * holds anything else, anything doubtful, or a slip, so that the full reader judges it. `deepest` bounds the nesting.
 */
export function plainYaml(text: string, deepest: number): PlainYaml | null {
  if (unusual.some((pattern) => pattern.test(text))) return null;
  try {
    const value = load(text, { maxDepth: deepest, maxAliases: 0 });
    return hasPlainKeys(value) ? { value } : null;
  } catch {
    return null;
  }
}

/** Numbers, null, true and false as keys become text in another way in each reader. */
const doubtfulKey = /^(?:[-+.\d]|null$|true$|false$)/;

function hasPlainKeys(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (Array.isArray(value)) return value.every(hasPlainKeys);
  return Object.entries(value).every(([key, inner]) => !doubtfulKey.test(key) && hasPlainKeys(inner));
}
