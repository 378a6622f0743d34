import type { Span } from '../finding.ts';

/** A line that begins with a plain key, one that can only go on or say nothing, and any other. */
const keyLine = /^([A-Za-z][\w-]*):(?=[ \r]|$)/;
const innerLine = /^(?:[ #]|\r?$)/;

/**
 * Where the keys of the outermost mapping stand, seen from the lines alone; null where these leave any doubt. Whatever else
 * the lines of a text mean, the keys at their beginnings are those of its value, in the same order.
 */
export function rootKeysOf(text: string, value: object): ReadonlyMap<string, Span> | null {
  const keys = Object.keys(value);
  const spans = new Map<string, Span>();
  let line = 0;
  for (let start = 0; start <= text.length; ) {
    line++;
    const end = text.indexOf('\n', start);
    const written = text.slice(start, end === -1 ? text.length : end);
    const key = keyLine.exec(written)?.[1];
    if (key === undefined ? !innerLine.test(written) : key !== keys[spans.size]) return null;
    if (key !== undefined) spans.set(key, { line, column: 1, endLine: line, endColumn: 1 + key.length });
    if (end === -1) break;
    start = end + 1;
  }
  return spans.size === keys.length ? spans : null;
}
