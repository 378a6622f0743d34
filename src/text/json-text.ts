const unprintable = /(?!\n)[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]|#(?=#\w*\[)/gu;

/**
 * A value as JSON (RFC 8259) for files and terminals. What cannot be seen, steers a terminal, or begins a command to a
 * code host is written as `\uXXXX`, which readers of JSON turn back.
 */
export function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 2).replace(unprintable, escaped)}\n`;
}

/** The same on one line, for programs alone. */
export function compactJsonText(value: unknown): string {
  return JSON.stringify(value).replace(unprintable, escaped);
}

/** A character by its UTF-16 code units, as JSON escapes it. */
function escaped(character: string): string {
  return Array.from(
    { length: character.length },
    (_, index) => `\\u${character.charCodeAt(index).toString(16).padStart(4, '0')}`,
  ).join('');
}
