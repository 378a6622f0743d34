import { join } from 'node:path';
import { failure, type Result, success } from '../result.ts';
import { type CommitProblem, commitOf, type GitCaller, type GitProblem, gitText } from './git.ts';

const caller: GitCaller = { name: '--changed', example: '--changed main' };

/** A file that differs between a commit and the working tree; it may be gone. */
export interface ChangedFile {
  /** Absolute path. */
  readonly path: string;
  /** Path from the folder that was asked about, with `/` between folders. */
  readonly relativePath: string;
}

/**
 * The files below some folders that differ between a commit of their git repository and the working tree: changed,
 * deleted, or new, committed or not.
 */
export async function changedFiles(
  base: string,
  folders: readonly string[],
): Promise<Result<readonly ChangedFile[], CommitProblem | GitProblem>> {
  const changed: ChangedFile[] = [];
  for (const folder of folders) {
    const commit = await commitOf(base, folder, caller);
    if (!commit.ok) return commit;
    for (const args of [
      ['diff', '--name-only', '-z', '--no-renames', '--no-ext-diff', '--relative', commit.value, '--', '.'],
      ['ls-files', '--others', '--exclude-standard', '-z', '--', '.'],
    ]) {
      const names = await gitText(folder, args);
      if (!names.ok) {
        const message = `git cannot list what has changed: ${names.error.message}`;
        return failure({ ...names.error, message });
      }
      const paths = names.value.split('\0').filter((name) => name !== '');
      changed.push(...paths.map((relativePath) => ({ relativePath, path: join(folder, relativePath) })));
    }
  }
  return success(changed);
}
