import { execFile } from 'node:child_process';
import { existsSync, realpathSync } from 'node:fs';
import { devNull } from 'node:os';
import { dirname, join, relative, sep } from 'node:path';
import { failure, type Problem, type Result, refusal, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import { isInside } from './inside.ts';

/** Why git gave no answer: it is not installed, or it failed. */
export type GitProblem = Problem<'gitMissing' | 'gitFailed'>;

/** A repository with a working tree, by the real path of the folder at its top. */
export interface Repository {
  readonly top: string;
}

/** Largest answer that is taken, in bytes. */
const largestAnswer = 1 << 28;

/** Ways in which git may reach another repository; none is open, not even to one beside it. */
const protocols = ['', '.file', '.git', '.ssh', '.http', '.https', '.ext'];

/**
 * What a repository has set up to run on a look at it stays off: hooks, a monitor of files, and the fetching of what a partial
 * clone lacks. A folder that only looks like a repository is none (git 2.38 and later; for older ones see `git`).
 */
const careful = [
  '--literal-pathspecs',
  '--no-replace-objects',
  '--no-optional-locks',
  ...[
    'safe.bareRepository=explicit',
    'core.fsmonitor=false',
    `core.hooksPath=${devNull}`,
    ...protocols.map((name) => `protocol${name}.allow=never`),
  ].flatMap((setting) => ['-c', setting]),
];

/**
 * Runs git without a shell, at the top of a repository: there it finds the one that was meant before it could take
 * anything deeper down, such as what a pull request brings, for another. Only commands that read objects or names may be
 * asked, none that looks at the working tree through filters.
 */
export function git(
  { top }: Repository,
  args: readonly string[],
  input = '',
): Promise<Result<Buffer, GitProblem>> {
  return new Promise((resolve) => {
    const child = execFile(
      'git',
      [...careful, ...args],
      { cwd: top, maxBuffer: largestAnswer, encoding: 'buffer' },
      (error, stdout) => resolve(error === null ? success(stdout) : failure(problemOf(error))),
    );
    // Git may end before it has read everything; its status tells.
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(input);
  });
}

function problemOf(error: Error & { readonly code?: string | number | null }): GitProblem {
  return error.code === 'ENOENT'
    ? { code: 'gitMissing', message: 'git is not installed', help: 'Install it.' }
    : { code: 'gitFailed', message: error.message, help: 'Run the same in a shell to see more.' };
}

/** Runs git and returns its answer as text. */
export async function gitText(
  repository: Repository,
  args: readonly string[],
): Promise<Result<string, GitProblem>> {
  const answer = await git(repository, args);
  return answer.ok ? success(answer.value.toString('utf8')) : answer;
}

/** Who asks git for a commit, for messages: `--changed`, and an example of the right use of it. */
export interface GitCaller {
  readonly name: string;
  readonly example: string;
}

/** Why there is no repository, or no such commit in it. */
export type CommitProblem = Problem<'unknownCommit' | 'noRepository' | 'gitMissing'>;

/**
 * The repository that a folder lies in: the nearest folder above with an entry `.git`, which no commit can bring. Git is
 * not asked to look for one, since it would take a folder with the insides of a repository for one too.
 */
export async function repositoryOf(
  folder: string,
  caller: GitCaller,
): Promise<Result<Repository, CommitProblem>> {
  const asks = `${caller.name} asks git what has changed`;
  const none = refusal(
    'noRepository',
    `${asks}, but ${folder} is not in a git repository`,
    'Begin one with `git init`, or run it where the registry is kept.',
  );
  const top = nearestWithGit(realpathSync(folder));
  if (top === null) return none;
  const found = await gitText({ top }, ['rev-parse', '--show-toplevel']);
  if (found.ok) return realpathSync(found.value.trimEnd()) === top ? success({ top }) : none;
  return found.error.code === 'gitMissing'
    ? refusal('gitMissing', `${asks}, and git is not installed`, 'Install it.')
    : refusal('noRepository', `${asks}, but it cannot read the repository in ${top}`, found.error.message);
}

function nearestWithGit(folder: string): string | null {
  if (existsSync(join(folder, '.git'))) return folder;
  const above = dirname(folder);
  return above === folder ? null : nearestWithGit(above);
}

/** Path of a folder from the top of a repository with `/` between folders, empty for the top; null outside of it. */
export function pathInRepository({ top }: Repository, folder: string): string | null {
  const real = realpathSync(folder);
  return isInside(real, top) ? relative(top, real).replaceAll(sep, '/') : null;
}

/** Id of the commit that a name stands for, so that no later argument can be taken for an option. */
export async function commitOf(
  name: string,
  repository: Repository,
  caller: GitCaller,
): Promise<Result<string, CommitProblem>> {
  const unknown = `git knows no commit "${quote(name)}" here`;
  const help = `Name a branch, a tag or a commit, for instance: ${caller.example}`;
  if (!/^[^-\p{Cc}][^\p{Cc}]*$/u.test(name)) return refusal('unknownCommit', unknown, help);
  const found = await gitText(repository, ['rev-parse', '--verify', '--quiet', `${name}^{commit}`]);
  const id = found.ok ? found.value.trim() : '';
  if (/^[0-9a-f]{40,64}$/.test(id)) return success(id);
  const shallow = await gitText(repository, ['rev-parse', '--is-shallow-repository']);
  return refusal(
    'unknownCommit',
    unknown,
    shallow.ok && shallow.value.trim() === 'true'
      ? 'This clone is shallow: it lacks older commits and other branches. Get them with `git fetch --unshallow` or `git fetch origin BRANCH`, and name a branch as origin/BRANCH.'
      : help,
  );
}
