import { failure, type Result, success } from '../result.ts';
import { type GitProblem, gitText, pathInRepository, type Repository } from './git.ts';
import { type TreeEntry, treeEntries } from './git-answers.ts';

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
  return success(treeEntries(listed.value, within));
}
