const unprintable = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** The same but for tabs and line ends, which a text of several lines is made of; a lone carriage return is none. */
const unprintableInLines = /(?!\t|\r?\n)[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** Text with control, bidirectional and other invisible characters written as `\u{…}`, safe for any terminal. */
export function printable(text: string): string {
  return text.replace(unprintable, writtenOut);
}

/** The same for a text of several lines, which keeps its line ends and tabs. */
export function printableLines(text: string): string {
  return text.replace(unprintableInLines, writtenOut);
}

function writtenOut(character: string): string {
  return `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}
