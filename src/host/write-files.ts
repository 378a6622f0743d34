import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode } from './file-error.ts';

/** Writes files, each a name and its text, into a folder that is made if it is not there; returns the names. */
export async function writeFiles(
  files: readonly (readonly [string, string])[],
  folder: string,
): Promise<string[]> {
  mkdirSync(folder, { recursive: true });
  for (const [file, text] of files) await writeFileAtomic(join(folder, file), text);
  return files.map(([file]) => file);
}

/** The same; where the folder or a file cannot be written, the problem says so, with the folder as the user named it. */
export async function tryWriteFiles(
  files: readonly (readonly [string, string])[],
  folder: string,
  named: string,
): Promise<Result<string[], Problem<'unwritable'>>> {
  try {
    return success(await writeFiles(files, folder));
  } catch (error) {
    return refusal(
      'unwritable',
      `--out ${printable(named)}: the files cannot be written (${fileErrorCode(error)})`,
      'Name a folder that you may write to.',
    );
  }
}
