import { mkdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode, linkElsewhere, unwritable } from './file-error.ts';
import { isLink, leadsOut } from './inside.ts';

/** Why a file was not written. */
export type WriteProblem = Problem<'unwritable' | 'linkElsewhere'>;

/** Writes a file, whole or not at all, over one that is there already. `path` is what the user calls it. */
export async function writeFile(
  path: string,
  text: string,
  cwd: string,
): Promise<Result<null, WriteProblem>> {
  const absolute = resolve(cwd, path);
  try {
    if (isLink(absolute) || leadsOut(dirname(absolute), cwd)) return linkElsewhere(path);
    await writeFileAtomic(absolute, text);
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
  cwd: string,
): Promise<Result<string[], WriteProblem>> {
  try {
    if (leadsOut(folder, cwd)) return linkElsewhere(named);
    mkdirSync(folder, { recursive: true });
    for (const [file, text] of files) {
      const path = join(folder, file);
      if (isLink(path)) return linkElsewhere(join(named, file));
      await writeFileAtomic(path, text);
    }
    return success(files.map(([file]) => file));
  } catch (error) {
    return refusal(
      'unwritable',
      `--out ${printable(named)}: the files cannot be written (${fileErrorCode(error)})`,
      'Name a folder that you may write to.',
    );
  }
}
