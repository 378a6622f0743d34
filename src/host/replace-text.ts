import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { type Problem, type Result, success } from '../result.ts';
import { unwritable } from './file-error.ts';

/**
 * Replaces the text of a file as a whole or not at all. A byte-order mark is no part of the text, and stays. `path` is
 * what the user calls the file, from the folder `cwd`.
 */
export async function replaceText(
  path: string,
  text: string,
  cwd: string,
): Promise<Result<null, Problem<'unwritable'>>> {
  const absolute = resolve(cwd, path);
  try {
    const mark = readFileSync(absolute, 'utf8').startsWith('\uFEFF') ? '\uFEFF' : '';
    await writeFileAtomic(absolute, mark + text);
    return success(null);
  } catch (error) {
    return unwritable(path, error);
  }
}
