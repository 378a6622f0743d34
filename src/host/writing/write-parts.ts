import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Result, success } from '../../result.ts';
import { linkElsewhere } from '../file-error.ts';
import { isLink, leadsOut } from '../inside.ts';
import { underLock } from './folder-lock.ts';
import { removeQuietly, tidyFolders } from './leftovers.ts';
import { gatherParts, partBeside, placeFile, placeFolder } from './put-file.ts';
import { isOther, noPlainFile, unwritableFolder, type WriteProblem } from './write-files.ts';

/** The next bytes of a file. */
interface FilePart {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * Writes files that come piece by piece into a folder, and returns their names. They lie beside their places until all are
 * complete and `confirm` agrees; then a folder that is not there yet comes with all of them, and in one that is there each
 * takes its place, in the order in which they began. So however large they are, one piece is held at a time, and nobody
 * waits while they are worked out. `named` is what the user calls the folder.
 */
export async function writeParts<Failure>(
  parts: Iterable<FilePart>,
  folder: string,
  named: string,
  cwd: string,
  confirm: () => Result<null, Failure>,
): Promise<Result<string[], WriteProblem | Failure>> {
  try {
    if (leadsOut(folder, cwd)) return linkElsewhere(named);
    const isThere = existsSync(folder);
    if (!isThere) mkdirSync(dirname(folder), { recursive: true });
    tidyFolders([dirname(folder), folder]);
    const beside = partBeside(isThere ? join(folder, 'files') : folder);
    try {
      const names = gatherParts(beside, parts);
      const confirmed = confirm();
      if (!confirmed.ok) return confirmed;
      return await place(beside, names, folder, named);
    } finally {
      removeQuietly(beside);
    }
  } catch (error) {
    return unwritableFolder(named, error);
  }
}

/** Moves what lies ready to its place: the whole folder if none is there, else file by file. */
async function place(
  beside: string,
  names: readonly string[],
  folder: string,
  named: string,
): Promise<Result<string[], WriteProblem>> {
  const made = await underLock<boolean, never>(dirname(folder), named, (mark) => {
    if (existsSync(folder)) return success(false);
    placeFolder(beside, folder, mark);
    return success(true);
  });
  if (!made.ok) return made;
  if (made.value) return success([...names]);
  const link = names.find((name) => isLink(join(folder, name)));
  if (link !== undefined) return linkElsewhere(join(named, link));
  const other = names.find((name) => isOther(join(folder, name)));
  if (other !== undefined) return noPlainFile(join(named, other));
  return underLock<string[], never>(folder, named, (mark) => {
    for (const name of names) placeFile(join(beside, name), join(folder, name), mark);
    return success([...names]);
  });
}
