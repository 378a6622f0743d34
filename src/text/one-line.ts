import { printable } from './printable.ts';

/** Text on one line: spaces and line breaks count as one space. */
export function collapsed(text: string): string {
  return text.replace(/\s+/g, ' ');
}

/** Text on one line, with what cannot be seen written as `\u{…}`. */
export function oneLine(text: string): string {
  return printable(collapsed(text));
}
