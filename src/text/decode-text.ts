/** How the characters of a text were written as bytes. */
export type CharacterEncoding = 'UTF-8' | 'UTF-16' | 'Latin-1';

/** A text, and how its bytes were understood. */
interface DecodedText {
  /** Without a byte-order mark. */
  readonly text: string;
  readonly encoding: CharacterEncoding;
}

/**
 * Reads bytes as text: UTF-16 with a byte-order mark, else UTF-8, and what is no UTF-8 as Latin-1 with the signs that Windows-1252
 * adds. Null where they are no text.
 */
export function decodeText(bytes: Uint8Array): DecodedText | null {
  const mark = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : null;
  const wide = bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : mark;
  if (wide !== null) return decoded(bytes, wide, 'UTF-16');
  return decoded(bytes, 'utf-8', 'UTF-8') ?? decoded(bytes, 'windows-1252', 'Latin-1');
}

function decoded(bytes: Uint8Array, label: string, encoding: CharacterEncoding): DecodedText | null {
  try {
    const text = new TextDecoder(label, { fatal: true }).decode(bytes);
    return encoding !== 'UTF-8' && binary.test(text) ? null : { text, encoding };
  } catch {
    return null;
  }
}

/** Characters that no text of a spreadsheet or an editor holds. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const binary = /[\0-\x08\x0e-\x1f]/;
