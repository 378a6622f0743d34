import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 (FIPS 180-4) of a text in UTF-8, as 64 hexadecimal digits. */
export function sha256Of(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** SHA-256 of bytes that come piece by piece. */
export function beginSha256(): { readonly add: (bytes: Uint8Array) => void; readonly digest: () => string } {
  const hash = sha256.create();
  return { add: (bytes) => void hash.update(bytes), digest: () => bytesToHex(hash.digest()) };
}
