import type { CharacterEncoding } from '../text/decode-text.ts';
import { sha256Of } from '../text/sha256.ts';

/** Text of a file with the names by which it is known. */
export interface SourceText {
  /** Path as the user would type it, with `/` between folders. */
  readonly path: string;
  /** Path from the root of its registry, with `/` between folders. */
  readonly relativePath: string;
  /** The text, without a byte-order mark; line ends as they stand in the file. */
  readonly text: string;
  /** SHA-256 of the text with LF line ends, so that a checkout with CRLF has the same digest. */
  readonly digest: string;
  /** How its bytes were read. */
  readonly encoding: CharacterEncoding;
}

export function sourceText(
  path: string,
  relativePath: string,
  raw: string,
  encoding: CharacterEncoding = 'UTF-8',
): SourceText {
  const text = raw.startsWith('\uFEFF') ? raw.slice(1) : raw;
  let digest: string | null = null;
  return {
    path,
    relativePath,
    text,
    encoding,
    // Few texts are ever asked for their digest.
    get digest() {
      digest ??= sha256Of(text.replaceAll('\r\n', '\n'));
      return digest;
    },
  };
}
