import {
  type CommitProblem,
  commitOf,
  type GitCaller,
  gitText,
  pathInRepository,
  type Repository,
  repositoryOf,
} from '../../host/git.ts';
import { treeAtCommit } from '../../host/git-tree.ts';
import { filesOfFolder, loadFolders } from '../../host/load-registry.ts';
import { filesAtCommit } from '../../host/registry-at-commit.ts';
import { registryFolder } from '../../host/registry-folders.ts';
import { type FileWithSiblings, type LoadedRegistry, linkFiles } from '../../registry/load-files.ts';
import { migrateText } from '../../registry/migrations/migrate-text.ts';
import { sourceText } from '../../registry/source-text.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';

/** One side of a comparison, and what the user calls it. */
interface DiffSide {
  readonly name: string;
  readonly loaded: LoadedRegistry;
  /** Absolute folders that were read. */
  readonly folders: readonly string[];
}

const caller: GitCaller = { name: 'diff', example: 'meltbounds diff main' };

/**
 * The registry that a word stands for: a folder that holds one, which then takes the place of the team's own; else a
 * commit of the repository that the working folder lies in. No word stands for the working tree.
 */
export async function diffSide(
  word: string | undefined,
  folders: Result<readonly string[], Problem>,
  cwd: string,
): Promise<Result<DiffSide, Problem>> {
  const folder = word === undefined || word === '' ? null : registryFolder(word, cwd);
  if (word !== undefined && folder?.ok) {
    const beneath = folders.ok ? folders.value.slice(0, -1) : [];
    const read = [...beneath, folder.value];
    const files = read.flatMap((path) => filesOfFolder(path, cwd));
    return success({ name: word, loaded: linkFiles(files.flat().map(inPresentShape)), folders: read });
  }
  if (!folders.ok) return folders;
  if (word === undefined) {
    return success({
      name: 'the working tree',
      loaded: loadFolders(folders.value, cwd),
      folders: folders.value,
    });
  }
  const found = await commitNamed(word, cwd);
  if (!found.ok) {
    const { code, message, help } = found.error;
    return refusal(code, message, `${help}\nOr name a folder that holds a registry.`);
  }
  const { repository, commit } = found.value;
  const files: (readonly FileWithSiblings[])[] = [];
  for (const path of folders.value) {
    const read = (await isKept(path, repository, commit))
      ? await filesAtCommit(commit, repository, path, cwd)
      : success(filesOfFolder(path, cwd));
    if (!read.ok) return read;
    files.push(read.value);
  }
  return success({ name: word, loaded: linkFiles(files.flat().map(inPresentShape)), folders: folders.value });
}

/** What a migration changes is the format, not what a profile says, and no difference. */
function inPresentShape(read: FileWithSiblings): FileWithSiblings {
  if (!read.file.ok) return read;
  const { path, relativePath, text } = read.file.source;
  const migrated = migrateText(text);
  if (!migrated.ok || migrated.value.applied.length === 0) return read;
  return { ...read, file: { ok: true, source: sourceText(path, relativePath, migrated.value.text) } };
}

async function commitNamed(
  word: string,
  cwd: string,
): Promise<Result<{ readonly repository: Repository; readonly commit: string }, CommitProblem>> {
  const repository = await repositoryOf(cwd, caller);
  if (!repository.ok) return repository;
  const commit = await commitOf(word, repository.value, caller);
  return commit.ok ? success({ repository: repository.value, commit: commit.value }) : commit;
}

/**
 * Whether a registry is kept in the repository. Where it lies elsewhere, or git knows no file of it and ignores it, as it
 * does an installed package, it is the same on both sides. That it is ignored does not count for files that git has:
 * whoever sends a change may send a list of what to ignore.
 */
async function isKept(folder: string, repository: Repository, commit: string): Promise<boolean> {
  const path = pathInRepository(repository, folder);
  if (path === null) return false;
  const before = await treeAtCommit(commit, repository, folder);
  if (path === '' || !before.ok || before.value.length > 0) return true;
  const tracked = await gitText(repository, ['ls-files', '--', path]);
  if (tracked.ok && tracked.value !== '') return true;
  return !(await gitText(repository, ['check-ignore', '--quiet', '--', path])).ok;
}
