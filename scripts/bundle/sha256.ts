import { createHash } from 'node:crypto';

/** What stands in for `sha256Of` in the command line: the same digests, by what Node has built in. */
export function sha256Of(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}
