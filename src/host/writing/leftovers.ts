import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { isAtWork, readMark } from './writer.ts';

/**
 * The locks in a folder that count. What runs have left there that ended before their time is removed, and so is what
 * `isGivenUp` says that nobody will come back to, of those that cannot be seen from here.
 */
export function locksIn(folder: string, isGivenUp: (name: string) => boolean = () => false): string[] {
  return readdirSync(folder).filter((name) => {
    const mark = readMark(name);
    if (mark === null) return false;
    const atWork = isAtWork(mark.writer);
    const isOver = atWork === false || (atWork === null && isGivenUp(name));
    if (isOver) removeQuietly(join(folder, name));
    return !isOver && mark.use === 'lock';
  });
}

/** Removes what runs have left in some folders that ended before their time, as far as they are there and it can be removed. */
export function tidyFolders(folders: readonly string[]): void {
  for (const folder of new Set(folders)) {
    try {
      locksIn(folder);
    } catch {
      // Not there, or not to be read.
    }
  }
}

/** Removes a file or folder. That something of no use stays is no reason to fail: the next run tries again. */
export function removeQuietly(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true });
  } catch {
    // Read-only, or somebody else's.
  }
}
