const unprintable = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** Text with control, bidirectional and other invisible characters written as `\u{…}`, safe for any terminal. */
export function printable(text: string): string {
  return text.replace(unprintable, (character) => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`);
}
