import { compareText } from '../finding.ts';
import type { IndexedFile } from './registry-index.ts';

/** How a folder differs from an index. */
export interface IndexDifference {
  readonly path: string;
  /** Missing: the index names it. Extra: it does not. Altered: it is not the same text. */
  readonly difference: 'missing' | 'extra' | 'altered';
}

/**
 * Compares the files of a folder with an index. `digestOf` gives the digest of a file, null where it is not there;
 * `present` are the paths of all profiles that are.
 */
export function verifyIndex(
  indexed: readonly IndexedFile[],
  present: readonly string[],
  digestOf: (path: string) => string | null,
): IndexDifference[] {
  const named = new Set(indexed.map(({ path }) => path));
  const differences = indexed.flatMap(({ path, sha256 }): IndexDifference[] => {
    const digest = digestOf(path);
    if (digest === null) return [{ path, difference: 'missing' }];
    return digest === sha256 ? [] : [{ path, difference: 'altered' }];
  });
  const extra = present
    .filter((path) => !named.has(path))
    .map((path): IndexDifference => ({ path, difference: 'extra' }));
  return [...differences, ...extra].sort((a, b) => compareText(a.path, b.path));
}
