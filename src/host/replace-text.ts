import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { type Result, success } from '../result.ts';
import { linkElsewhere, unwritable } from './file-error.ts';
import { isLink, leadsOut } from './inside.ts';
import type { WriteProblem } from './write-files.ts';

/**
 * Replaces the text of a file as a whole or not at all. A byte-order mark is no part of the text, and stays. `path` is
 * what the user calls the file, from the folder `cwd`.
 */
export async function replaceText(
  path: string,
  text: string,
  cwd: string,
): Promise<Result<null, WriteProblem>> {
  const absolute = resolve(cwd, path);
  try {
    if (isLink(absolute) || leadsOut(dirname(absolute), cwd)) return linkElsewhere(path);
    const mark = readFileSync(absolute, 'utf8').startsWith('\uFEFF') ? '\uFEFF' : '';
    await writeFileAtomic(absolute, mark + text);
    return success(null);
  } catch (error) {
    return unwritable(path, error);
  }
}
