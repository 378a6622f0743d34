import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { isProfileName, isSheetName, largestFile } from '../registry/registry-file.ts';
import { type Result, refusal, success } from '../result.ts';
import {
  type CommitProblem,
  commitOf,
  type GitCaller,
  type GitProblem,
  pathInRepository,
  type Repository,
  repositoryOf,
} from './git.ts';
import type { TreeEntry } from './git-answers.ts';
import { treeAtCommit } from './git-tree.ts';
import { noLink, readPlainFile } from './read-plain-file.ts';
import { registryFileNames } from './registry-files.ts';

const caller: GitCaller = { name: '--changed', example: '--changed main' };

/** A file that differs between a commit and the working tree; it may be gone. */
export interface ChangedFile {
  /** Absolute path. */
  readonly path: string;
  /** Path from the folder that was asked about, with `/` between folders. */
  readonly relativePath: string;
}

/**
 * The profiles and sheets below some folders that differ between a commit of the git repository that `cwd` lies in and the
 * working tree: changed, deleted, or new, committed or not. The content of files is compared here and not by git, which
 * would send it through filters that the repository names.
 */
export async function changedFiles(
  base: string,
  folders: readonly string[],
  cwd: string,
): Promise<Result<readonly ChangedFile[], CommitProblem | GitProblem>> {
  const repository = await repositoryOf(cwd, caller);
  if (!repository.ok) return repository;
  const commit = await commitOf(base, repository.value, caller);
  if (!commit.ok) return commit;
  const changed: ChangedFile[] = [];
  for (const folder of folders) {
    if (pathInRepository(repository.value, folder) === null) return elsewhere(folder, repository.value);
    const tree = await treeAtCommit(commit.value, repository.value, folder);
    if (!tree.ok) return tree;
    for (const relativePath of changedPaths(folder, tree.value))
      changed.push({ relativePath, path: join(folder, relativePath) });
  }
  return success(changed);
}

function elsewhere(folder: string, { top }: Repository) {
  return refusal(
    'noRepository',
    `--changed asks git what has changed in ${top}, but ${folder} is not kept there`,
    'Run it where the registry is kept.',
  );
}

const isCompared = (path: string) => isProfileName(path) || isSheetName(path);

function changedPaths(folder: string, tree: readonly TreeEntry[]): string[] {
  const before = new Map(tree.filter(({ path }) => isCompared(path)).map((entry) => [entry.path, entry]));
  const now = registryFileNames(folder, isCompared);
  const present = new Set(now);
  return [
    ...[...before.keys()].filter((path) => !present.has(path)),
    ...now.filter((path) => isChanged(join(folder, path), before.get(path))),
  ];
}

/** What cannot be read, or is no plain file, counts as changed: somebody has to look at it. */
function isChanged(path: string, before: TreeEntry | undefined): boolean {
  if (before === undefined || before.isLink) return true;
  try {
    const read = readPlainFile(path, largestFile, noLink);
    if (!read.ok) return true;
    const bytes = read.value;
    // Git may be set up to write CR LF into the working tree.
    return (
      objectId(bytes, before) !== before.object && objectId(withoutReturns(bytes), before) !== before.object
    );
  } catch {
    return true;
  }
}

/** The id that git gives a content: a digest of its length and its bytes, by the digest that the repository uses. */
function objectId(bytes: Buffer, { object }: TreeEntry): string {
  return createHash(object.length === 40 ? 'sha1' : 'sha256')
    .update(`blob ${bytes.length}\0`)
    .update(bytes)
    .digest('hex');
}

function withoutReturns(bytes: Buffer): Buffer {
  return Buffer.from(bytes.toString('latin1').replaceAll('\r\n', '\n'), 'latin1');
}
