import { commitOf, type GitCaller, gitText } from '../../host/git.ts';
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
 * commit of the repository of the team's own, the last of the folders. No word stands for the working tree.
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
    return success({ name: word, loaded: linkFiles(files.map(inPresentShape)), folders: read });
  }
  if (!folders.ok) return folders;
  if (word === undefined) {
    return success({
      name: 'the working tree',
      loaded: loadFolders(folders.value, cwd),
      folders: folders.value,
    });
  }
  const own = folders.value.at(-1) ?? cwd;
  const commit = await commitOf(word, own, caller);
  if (!commit.ok) {
    const { code, message, help } = commit.error;
    return refusal(code, message, `${help}\nOr name a folder that holds a registry.`);
  }
  const files: FileWithSiblings[] = [];
  for (const path of folders.value) {
    const read = (await isInRepository(path, own))
      ? await filesAtCommit(commit.value, path, cwd)
      : success(filesOfFolder(path, cwd));
    if (!read.ok) return read;
    files.push(...read.value);
  }
  return success({ name: word, loaded: linkFiles(files.map(inPresentShape)), folders: folders.value });
}

/** What a migration changes is the format, not what a profile says, and no difference. */
function inPresentShape(read: FileWithSiblings): FileWithSiblings {
  if (!read.file.ok) return read;
  const { path, relativePath, text } = read.file.source;
  const migrated = migrateText(text);
  if (!migrated.ok || migrated.value.applied.length === 0) return read;
  return { ...read, file: { ok: true, source: sourceText(path, relativePath, migrated.value.text) } };
}

/**
 * Whether a registry is kept in the repository of another one. Where it is not, or git ignores it as it does an installed
 * package, it is the same on both sides.
 */
async function isInRepository(folder: string, own: string): Promise<boolean> {
  const [here, there] = [await topOf(folder), await topOf(own)];
  if (here !== there) return false;
  return !(await gitText(folder, ['check-ignore', '--quiet', '--', folder])).ok;
}

async function topOf(folder: string): Promise<string | null> {
  const top = await gitText(folder, ['rev-parse', '--show-toplevel']);
  return top.ok ? top.value : null;
}
