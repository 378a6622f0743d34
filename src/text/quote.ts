import { printable } from './printable.ts';

const longestQuote = 40;
const plain = /^[ -~]*$/;

/** Any value of a document as messages quote it: at most 40 characters, on one line, invisible ones as escapes. */
export function quote(value: unknown): string {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  if (text.length <= longestQuote && plain.test(text)) return text;
  const characters = [...text.slice(0, 2 * longestQuote + 2)];
  const visible = printable(characters.slice(0, longestQuote).join(''));
  return characters.length > longestQuote ? `${visible}…` : visible;
}
