import { existsSync, mkdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { failure, type Result, success } from '../result.ts';

/**
 * Writes a file that is not there yet, inside of a folder: never over another file, nor through a link that leads
 * out of the folder. `path` is relative to the folder.
 */
export function writeNewFile(folder: string, path: string, text: string): Result<true, string> {
  const absolute = join(folder, path);
  mkdirSync(folder, { recursive: true });
  if (!nearestReal(dirname(absolute)).startsWith(realpathSync(folder))) {
    return failure(`${path} lies behind a link that leads elsewhere; nothing was written.`);
  }
  try {
    mkdirSync(dirname(absolute), { recursive: true });
    // `wx` fails where anything stands already, a link included.
    writeFileSync(absolute, text, { flag: 'wx' });
    return success(true);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    if (code === 'EEXIST') return failure(`${path} is there already, and nothing is ever written over.`);
    // What a full disk leaves half-written is ours alone: the file was not there before.
    if (code === 'ENOSPC') rmSync(absolute, { force: true });
    return failure(`${path} cannot be written (${String(code)}).`);
  }
}

/** Real path of the nearest folder above a path that exists, with a separator at its end left out. */
function nearestReal(path: string): string {
  let folder = path;
  while (!existsSync(folder) && folder !== dirname(folder)) folder = dirname(folder);
  const real = realpathSync(folder);
  return real.endsWith(sep) ? real.slice(0, -1) : real;
}
