import type { FileWithSiblings } from '../registry/load-files.ts';
import {
  fileOfBytes,
  isProfilePath,
  largestFile,
  type ReadFile,
  refused,
} from '../registry/registry-file.ts';
import { failure, type Result, success } from '../result.ts';
import { type GitProblem, git, type Repository } from './git.ts';
import { blobsIn, type TreeEntry } from './git-answers.ts';
import { treeAtCommit } from './git-tree.ts';
import { rootOf } from './load-registry.ts';
import type { RegistryRoot } from './registry-files.ts';

/**
 * Files of a registry folder as they are in a commit, read from the repository: the working tree stays as it is.
 */
export async function filesAtCommit(
  commit: string,
  repository: Repository,
  folder: string,
  cwd: string,
): Promise<Result<FileWithSiblings[], GitProblem>> {
  const root = rootOf(folder, cwd);
  const entries = await treeAtCommit(commit, repository, root.folder);
  if (!entries.ok) return entries;
  const blobs = await readBlobs(repository, entries.value.filter(isWanted));
  if (!blobs.ok) return blobs;
  const files = new Map(
    entries.value.map((entry) => [entry.path, fileOf(root, entry, blobs.value)] as const),
  );
  const readSibling = (path: string) => files.get(path) ?? refused(root, path, 'missing');
  return success([...files].flatMap(([path, file]) => (isProfilePath(path) ? [{ file, readSibling }] : [])));
}

/** Profiles, and what may stand beside them: the sheets of trials. */
function isWanted({ isLink, size, path }: TreeEntry): boolean {
  return !isLink && size <= largestFile && (isProfilePath(path) || path.endsWith('.csv'));
}

function fileOf(root: RegistryRoot, entry: TreeEntry, blobs: ReadonlyMap<string, Uint8Array>): ReadFile {
  if (entry.isLink) return refused(root, entry.path, 'symlink');
  if (entry.size > largestFile) return refused(root, entry.path, 'tooLarge');
  const bytes = blobs.get(entry.object);
  return bytes === undefined ? refused(root, entry.path, 'unreadable') : fileOfBytes(root, entry.path, bytes);
}

async function readBlobs(
  repository: Repository,
  entries: readonly TreeEntry[],
): Promise<Result<ReadonlyMap<string, Uint8Array>, GitProblem>> {
  const objects = [...new Set(entries.map(({ object }) => object))];
  const answer = await git(
    repository,
    ['cat-file', '--batch'],
    objects.map((object) => `${object}\n`).join(''),
  );
  if (!answer.ok) {
    const message = `git cannot read what the commit holds: ${answer.error.message}`;
    return failure({ ...answer.error, message });
  }
  return success(blobsIn(answer.value));
}
