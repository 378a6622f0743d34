import { load } from 'js-yaml';

/** A value that the fast reader vouches for. */
export interface PlainYaml {
  readonly value: unknown;
}

/**
 * What sends a text to the full reader: tags, anchors and aliases; directives, document marks, empty keys, keys with `? ` and keys that
 * look like numbers or nothing; merge keys, keys that mean something to JavaScript, endless numbers; tabs, line ends and invisible characters that readers take differently.
 */
const unusual = [
  /(?:^|[\s[\]{},:?-])[&*!](?=\S)/m,
  /^(?:%|---|\.\.\.)/m,
  /(?:^|[\s[{,-])[?:](?:\s|$)/m,
  /(?:^|[\s[{,-])(?:~|[-+.]{0,64}\d[\w.+-]{0,64}|[-+.]{1,64}\w{0,64})\s{0,64}:(?:\s|$)/m,
  // Longer than the bounds of the line above, which keep the search linear.
  /[\w.+-]{65}|\s{65}/,
  /<<|__proto__|\d[eE][-+]?\d{3}/,
  /\r(?!\n)|[^\n\r\x20-\x7e\u00a1-\u1fff\u2030-\u205e\u2070-\u20cf\u2100-\u218f]/u,
];

/**
 * Reads a text of block and flow collections and scalars, about ten times faster than the full reader; null where the text
 * holds anything else, anything doubtful, or a slip, so that the full reader judges it. `deepest` bounds the nesting.
 */
export function plainYaml(text: string, deepest: number): PlainYaml | null {
  if (unusual.some((pattern) => pattern.test(text))) return null;
  try {
    return { value: load(text, { maxDepth: deepest, maxAliases: 0 }) };
  } catch {
    return null;
  }
}
