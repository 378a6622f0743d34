import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { printable } from '../../text/printable.ts';
import { linkElsewhere, unwritable } from '../file-error.ts';
import { isLink, leadsOut } from '../inside.ts';
import { underLock } from './folder-lock.ts';
import { replaceFile } from './put-file.ts';
import type { WriteProblem } from './write-files.ts';

/** A text as it was read, and what is to stand in its place. */
interface Replacement {
  readonly before: string;
  readonly after: string;
}

/** Why a text was not replaced. */
export type ReplaceProblem = WriteProblem | Problem<'changedMeanwhile'>;

/**
 * Replaces the text of a file as a whole or not at all, and only if it is still the one that was read: what somebody else
 * has written meanwhile is never lost. A byte-order mark is no part of the text, and stays. `path` is what the user calls
 * the file, from the folder `cwd`.
 */
export async function replaceText(
  path: string,
  { before, after }: Replacement,
  cwd: string,
): Promise<Result<null, ReplaceProblem>> {
  const absolute = resolve(cwd, path);
  try {
    if (isLink(absolute) || leadsOut(dirname(absolute), cwd)) return linkElsewhere(path);
    return await underLock(dirname(absolute), path, (mark) => {
      const now = readFileSync(absolute, 'utf8');
      const byteOrderMark = now.startsWith('\uFEFF') ? '\uFEFF' : '';
      if (now === byteOrderMark + after) return success(null);
      if (now !== byteOrderMark + before) return changedMeanwhile(path);
      replaceFile(absolute, byteOrderMark + after, mark);
      return success(null);
    });
  } catch (error) {
    return unwritable(path, error);
  }
}

function changedMeanwhile(path: string) {
  return refusal(
    'changedMeanwhile',
    `${printable(path)} was changed by somebody else meanwhile, and stays as they left it`,
    'Run the command again.',
  );
}
