import { mkdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode, unwritable } from './file-error.ts';
import { isInside, nearestReal } from './inside.ts';

/** Why a new file was not written. */
export type NewFileProblem = Problem<'unwritable' | 'linkElsewhere' | 'fileExists'>;

/**
 * Writes a file that is not there yet, inside of a folder, which is made where it is missing: never over another file,
 * nor through a link that leads out of the folder. `path` is relative to the folder.
 */
export function writeNewFile(folder: string, path: string, text: string): Result<true, NewFileProblem> {
  const absolute = join(folder, path);
  const shown = printable(path);
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    return refusal(
      'unwritable',
      `The folder ${printable(folder)} cannot be made (${fileErrorCode(error)})`,
      'Name one that you may make.',
    );
  }
  if (!isInside(nearestReal(dirname(absolute)), realpathSync(folder))) {
    return refusal(
      'linkElsewhere',
      `${shown} lies behind a link that leads elsewhere; nothing was written`,
      'Take the link away, or write where it leads.',
    );
  }
  try {
    mkdirSync(dirname(absolute), { recursive: true });
    // `wx` fails where anything stands already, a link included.
    writeFileSync(absolute, text, { flag: 'wx' });
    return success(true);
  } catch (error) {
    const code = fileErrorCode(error);
    if (code === 'EEXIST') {
      return refusal(
        'fileExists',
        `${shown} is there already, and nothing is ever written over`,
        'Move it away, or choose another name.',
      );
    }
    // What a full disk leaves half-written is ours alone: the file was not there before.
    if (code === 'ENOSPC') rmSync(absolute, { force: true });
    return unwritable(path, error);
  }
}
