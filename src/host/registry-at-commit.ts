import type { FileWithSiblings } from '../registry/load-files.ts';
import {
  fileOfBytes,
  isProfilePath,
  largestFile,
  type ReadFile,
  refused,
} from '../registry/registry-file.ts';
import { failure, type Result, success } from '../result.ts';
import { type GitProblem, git, gitText } from './git.ts';
import { rootOf } from './load-registry.ts';
import type { RegistryRoot } from './registry-files.ts';

/**
 * Files of a registry folder as they are in a commit, read from the repository: the working tree stays as it is.
 */
export async function filesAtCommit(
  commit: string,
  folder: string,
  cwd: string,
): Promise<Result<FileWithSiblings[], GitProblem>> {
  const root = rootOf(folder, cwd);
  const listed = await gitText(root.folder, ['ls-tree', '-r', '-z', '-l', commit, '--', '.']);
  if (!listed.ok) {
    const message = `git cannot list the files of ${commit}: ${listed.error.message}`;
    return failure({ ...listed.error, message });
  }
  const entries = listed.value.split('\0').flatMap((line) => entryOf(line) ?? []);
  const blobs = await readBlobs(root.folder, entries.filter(isWanted));
  if (!blobs.ok) return blobs;
  const files = new Map(entries.map((entry) => [entry.path, fileOf(root, entry, blobs.value)] as const));
  const readSibling = (path: string) => files.get(path) ?? refused(root, path, 'missing');
  return success([...files].flatMap(([path, file]) => (isProfilePath(path) ? [{ file, readSibling }] : [])));
}

/** A file in a commit. */
interface TreeEntry {
  readonly isLink: boolean;
  readonly object: string;
  /** Bytes. */
  readonly size: number;
  /** Path from the folder that was asked about. */
  readonly path: string;
}

/** `100644 blob 3b18e5…    1234\tmachines/maker/model.yaml`; a submodule is no file. */
function entryOf(line: string): TreeEntry | null {
  const [, mode = '', object = '', size = '', path = ''] =
    /^([0-7]+) blob ([0-9a-f]{40,64}) +([0-9]+)\t(.+)$/s.exec(line) ?? [];
  return path === '' ? null : { isLink: mode === '120000', object, size: Number(size), path };
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
  folder: string,
  entries: readonly TreeEntry[],
): Promise<Result<ReadonlyMap<string, Uint8Array>, GitProblem>> {
  const objects = [...new Set(entries.map(({ object }) => object))];
  const answer = await git(folder, ['cat-file', '--batch'], objects.map((object) => `${object}\n`).join(''));
  if (!answer.ok) {
    const message = `git cannot read what the commit holds: ${answer.error.message}`;
    return failure({ ...answer.error, message });
  }
  return success(blobsIn(answer.value));
}

/** Splits `ID blob SIZE\nBYTES\n…`, and passes over `ID missing\n`. */
function blobsIn(answer: Buffer): ReadonlyMap<string, Uint8Array> {
  const blobs = new Map<string, Uint8Array>();
  for (let start = 0; start < answer.length; ) {
    const end = answer.indexOf('\n', start);
    if (end < 0) break;
    const [object = '', type = '', size = ''] = answer.toString('utf8', start, end).split(' ');
    const length = type === 'blob' ? Number(size) : null;
    if (length !== null) blobs.set(object, answer.subarray(end + 1, end + 1 + length));
    start = length === null ? end + 1 : end + 1 + length + 1;
  }
  return blobs;
}
