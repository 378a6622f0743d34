import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { quote } from '../registry/quote.ts';
import { failure, type Result, success } from '../result.ts';

const execute = promisify(execFile);

/** A file that differs between a commit and the working tree; it may be gone. */
export interface ChangedFile {
  /** Absolute path. */
  readonly path: string;
  /** Path from the folder that was asked about, with `/` between folders. */
  readonly relativePath: string;
}

/**
 * The files below some folders that differ between a commit of their git repository and the working tree: changed,
 * deleted, or new, committed or not. Errors: no git, no repository, no such commit.
 */
export async function changedFiles(
  base: string,
  folders: readonly string[],
): Promise<Result<readonly ChangedFile[], string>> {
  const changed: ChangedFile[] = [];
  for (const folder of folders) {
    const commit = await commitOf(base, folder);
    if (!commit.ok) return commit;
    for (const args of [
      ['diff', '--name-only', '-z', '--no-renames', '--no-ext-diff', '--relative', commit.value, '--', '.'],
      ['ls-files', '--others', '--exclude-standard', '-z', '--', '.'],
    ]) {
      const names = await git(folder, args);
      if (!names.ok) return failure(`git cannot list what has changed: ${names.error.message}`);
      const paths = names.value.split('\0').filter((name) => name !== '');
      changed.push(...paths.map((relativePath) => ({ relativePath, path: join(folder, relativePath) })));
    }
  }
  return success(changed);
}

/** Id of the commit that a name stands for, so that no later argument can be taken for an option. */
async function commitOf(base: string, folder: string): Promise<Result<string, string>> {
  const unknown = failure(
    `git knows no commit "${quote(base)}" here. Name a branch, a tag or a commit, for instance: --changed main`,
  );
  if (!/^[^-\p{Cc}][^\p{Cc}]*$/u.test(base)) return unknown;
  const inside = await git(folder, ['rev-parse', '--is-inside-work-tree']);
  if (!inside.ok) {
    return failure(
      inside.error.isMissing
        ? '--changed asks git what has changed, and git is not installed.'
        : `--changed asks git what has changed, but ${folder} is not in a git repository.`,
    );
  }
  const found = await git(folder, ['rev-parse', '--verify', '--quiet', `${base}^{commit}`]);
  const id = found.ok ? found.value.trim() : '';
  return /^[0-9a-f]{40,64}$/.test(id) ? success(id) : unknown;
}

/** Runs git without a shell. What a repository has set up to run on a look at its files stays off. */
async function git(
  folder: string,
  args: readonly string[],
): Promise<Result<string, { readonly message: string; readonly isMissing: boolean }>> {
  try {
    const { stdout } = await execute('git', ['-c', 'core.fsmonitor=false', ...args], {
      cwd: folder,
      maxBuffer: 1 << 26,
    });
    return success(stdout);
  } catch (error) {
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    return failure({ message: error instanceof Error ? error.message : String(error), isMissing });
  }
}
