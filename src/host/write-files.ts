import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode, unwritable } from './file-error.ts';

/** Writes a file, whole or not at all, over one that is there already. `path` is what the user calls it. */
export async function writeFile(
  path: string,
  text: string,
  cwd: string,
): Promise<Result<null, Problem<'unwritable'>>> {
  try {
    await writeFileAtomic(resolve(cwd, path), text);
    return success(null);
  } catch (error) {
    return unwritable(path, error);
  }
}

/**
 * Writes files, each a name and its text, into a folder that is made if it is not there; returns the names. `named` is
 * what the user calls the folder.
 */
export async function writeFiles(
  files: readonly (readonly [string, string])[],
  folder: string,
  named: string,
): Promise<Result<string[], Problem<'unwritable'>>> {
  try {
    mkdirSync(folder, { recursive: true });
    for (const [file, text] of files) await writeFileAtomic(join(folder, file), text);
    return success(files.map(([file]) => file));
  } catch (error) {
    return refusal(
      'unwritable',
      `--out ${printable(named)}: the files cannot be written (${fileErrorCode(error)})`,
      'Name a folder that you may write to.',
    );
  }
}
