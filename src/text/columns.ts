import stringWidth from 'string-width';

/**
 * Columns that a text takes in a terminal. Most are plain ASCII, which needs no counting: the library looks at every
 * character for what it may join with.
 */
export function columnsOf(text: string): number {
  return /^[\x20-\x7e]*$/.test(text) ? text.length : stringWidth(text);
}
