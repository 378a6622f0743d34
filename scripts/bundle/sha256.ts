import { createHash } from 'node:crypto';

/** What stands in for `src/text/sha256.ts` in the command line: the same digests, by what Node has built in. */
export function sha256Of(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** The same for bytes that come piece by piece. */
export function beginSha256() {
  const hash = createHash('sha256');
  return { add: (bytes: Uint8Array) => void hash.update(bytes), digest: () => hash.digest('hex') };
}
