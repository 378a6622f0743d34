import type { Finding } from '../../registry/finding.ts';
import { sha256Of } from '../../text/sha256.ts';

/** Tells findings apart by what they are about, not by line, so that they stay the same when lines move. */
export function fingerprinter(): (finding: Finding) => string {
  const seen = new Map<string, number>();
  return ({ rule, file, pointer }) => {
    const key = JSON.stringify([rule, file, pointer]);
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return sha256Of(JSON.stringify([rule, file, pointer, count])).slice(0, 32);
  };
}
