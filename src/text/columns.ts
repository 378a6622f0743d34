import terminalWidth from 'fast-string-width';

/** Columns that a text takes in a terminal. Most are plain ASCII, which needs no counting. */
export function columnsOf(text: string): number {
  return /^[\x20-\x7e]*$/.test(text) ? text.length : terminalWidth(text);
}
