import { execFile } from 'node:child_process';
import { failure, type Problem, type Result, refusal, success } from '../result.ts';
import { quote } from '../text/quote.ts';

/** Why git gave no answer: it is not installed, or it failed. */
export type GitProblem = Problem<'gitMissing' | 'gitFailed'>;

/** Largest answer that is taken, in bytes. */
const largestAnswer = 1 << 28;

/** Runs git without a shell. What a repository has set up to run on a look at its files stays off. */
export function git(
  folder: string,
  args: readonly string[],
  input = '',
): Promise<Result<Buffer, GitProblem>> {
  return new Promise((resolve) => {
    const child = execFile(
      'git',
      ['-c', 'core.fsmonitor=false', ...args],
      { cwd: folder, maxBuffer: largestAnswer, encoding: 'buffer' },
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
export async function gitText(folder: string, args: readonly string[]): Promise<Result<string, GitProblem>> {
  const answer = await git(folder, args);
  return answer.ok ? success(answer.value.toString('utf8')) : answer;
}

/** Who asks git for a commit, for messages: `--changed`, and an example of the right use of it. */
export interface GitCaller {
  readonly name: string;
  readonly example: string;
}

/** Why there is no such commit. */
export type CommitProblem = Problem<'unknownCommit' | 'noRepository' | 'gitMissing'>;

/** Id of the commit that a name stands for, so that no later argument can be taken for an option. */
export async function commitOf(
  name: string,
  folder: string,
  caller: GitCaller,
): Promise<Result<string, CommitProblem>> {
  const unknown = `git knows no commit "${quote(name)}" here`;
  const help = `Name a branch, a tag or a commit, for instance: ${caller.example}`;
  if (!/^[^-\p{Cc}][^\p{Cc}]*$/u.test(name)) return refusal('unknownCommit', unknown, help);
  const inside = await gitText(folder, ['rev-parse', '--is-inside-work-tree']);
  if (!inside.ok) {
    const asks = `${caller.name} asks git what has changed`;
    return inside.error.code === 'gitMissing'
      ? refusal('gitMissing', `${asks}, and git is not installed`, 'Install it.')
      : refusal(
          'noRepository',
          `${asks}, but ${folder} is not in a git repository`,
          'Begin one with `git init`, or run it where the registry is kept.',
        );
  }
  const found = await gitText(folder, ['rev-parse', '--verify', '--quiet', `${name}^{commit}`]);
  const id = found.ok ? found.value.trim() : '';
  if (/^[0-9a-f]{40,64}$/.test(id)) return success(id);
  const shallow = await gitText(folder, ['rev-parse', '--is-shallow-repository']);
  return refusal(
    'unknownCommit',
    unknown,
    shallow.ok && shallow.value.trim() === 'true'
      ? 'This clone is shallow: it lacks older commits and other branches. Get them with `git fetch --unshallow` or `git fetch origin BRANCH`, and name a branch as origin/BRANCH.'
      : help,
  );
}
