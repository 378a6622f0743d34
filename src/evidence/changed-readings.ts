import { readingsDigest } from '../bench/adopt/readings-digest.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Profile } from '../registry/profile.ts';

/** The digest of the readings of a trial now, where a statement was adopted from others; else null. */
export function changedReadings(
  { readings }: Pick<Statement<unknown>, 'readings'>,
  trial: Profile<'trial'>,
): string | null {
  const now = readings === undefined ? null : readingsDigest(trial);
  return now === readings ? null : now;
}
