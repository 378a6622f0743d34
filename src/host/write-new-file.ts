import { existsSync, mkdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, sep } from 'node:path';
import { failure, type Result, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode } from './file-error.ts';

/**
 * Writes a file that is not there yet, inside of a folder, which is made where it is missing: never over another file,
 * nor through a link that leads out of the folder. `path` is relative to the folder.
 */
export function writeNewFile(folder: string, path: string, text: string): Result<true, string> {
  const absolute = join(folder, path);
  const shown = printable(path);
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    return failure(`The folder ${printable(folder)} cannot be made (${fileErrorCode(error)}).`);
  }
  if (!isInside(nearestReal(dirname(absolute)), realpathSync(folder))) {
    return failure(`${shown} lies behind a link that leads elsewhere; nothing was written.`);
  }
  try {
    mkdirSync(dirname(absolute), { recursive: true });
    // `wx` fails where anything stands already, a link included.
    writeFileSync(absolute, text, { flag: 'wx' });
    return success(true);
  } catch (error) {
    const code = fileErrorCode(error);
    if (code === 'EEXIST') return failure(`${shown} is there already, and nothing is ever written over.`);
    // What a full disk leaves half-written is ours alone: the file was not there before.
    if (code === 'ENOSPC') rmSync(absolute, { force: true });
    return failure(`${shown} cannot be written (${code}).`);
  }
}

/** Whether a path is a folder or lies in it; one whose name merely begins the same does not. */
function isInside(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** Real path of the nearest folder above a path that exists. */
function nearestReal(path: string): string {
  let folder = path;
  while (!existsSync(folder) && folder !== dirname(folder)) folder = dirname(folder);
  return realpathSync(folder);
}
