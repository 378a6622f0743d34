import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 (FIPS 180-4) of a text in UTF-8, as 64 hexadecimal digits. */
export function sha256Of(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}
