import { failure, type Result, success } from '../result.ts';
import { type GitProblem, gitText, pathInRepository, type Repository } from './git.ts';

/** A file in a commit. */
export interface TreeEntry {
  readonly isLink: boolean;
  /** Id of its content. */
  readonly object: string;
  /** Bytes. */
  readonly size: number;
  /** Path from the folder that was asked about, with `/` between folders. */
  readonly path: string;
}

/** All files below a folder as they are in a commit; none where the folder is not in the repository. */
export async function treeAtCommit(
  commit: string,
  repository: Repository,
  folder: string,
): Promise<Result<TreeEntry[], GitProblem>> {
  const within = pathInRepository(repository, folder);
  if (within === null) return success([]);
  const listing = ['ls-tree', '-r', '-z', '-l', '--full-tree', commit];
  const listed = await gitText(repository, within === '' ? listing : [...listing, '--', within]);
  if (!listed.ok) {
    const message = `git cannot list the files of ${commit}: ${listed.error.message}`;
    return failure({ ...listed.error, message });
  }
  const prefix = within === '' ? '' : `${within}/`;
  const entries = listed.value.split('\0').flatMap((line) => entryOf(line) ?? []);
  return success(
    entries.flatMap((entry) =>
      entry.path.startsWith(prefix) ? [{ ...entry, path: entry.path.slice(prefix.length) }] : [],
    ),
  );
}

/** `100644 blob 3b18e5…    1234\tmachines/maker/model.yaml`; a submodule is no file. */
function entryOf(line: string): TreeEntry | null {
  const [, mode = '', object = '', size = '', path = ''] =
    /^([0-7]+) blob ([0-9a-f]{40,64}) +([0-9]+)\t(.+)$/s.exec(line) ?? [];
  return path === '' ? null : { isLink: mode === '120000', object, size: Number(size), path };
}
