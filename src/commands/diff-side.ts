import { resolve } from 'node:path';
import {
  type FileWithSiblings,
  filesOfFolder,
  type LoadedRegistry,
  loadFiles,
  loadRegistry,
} from '../registry/load-registry.ts';
import { failure, type Result, success } from '../result.ts';
import { type Asker, commitOf, gitText } from './git.ts';
import { filesAtCommit } from './registry-at-commit.ts';
import { registryFolder } from './registry-folders.ts';

/** One side of a comparison, and what the user calls it. */
export interface DiffSide {
  readonly name: string;
  readonly loaded: LoadedRegistry;
}

const asker: Asker = { name: 'diff', example: 'meltbounds diff main' };

/**
 * The registry that a word stands for: a folder that holds one, else a commit of the repository that holds the
 * registries named beside it. No word stands for these as they are in the working tree.
 */
export async function diffSide(
  word: string | undefined,
  folders: Result<readonly string[], string>,
  cwd: string,
): Promise<Result<DiffSide, string>> {
  const folder = word === undefined || word === '' ? null : registryFolder(word, cwd);
  if (word !== undefined && folder?.ok) {
    return success({ name: word, loaded: loadRegistry([folder.value], cwd) });
  }
  if (!folders.ok) return folders;
  if (word === undefined) {
    return success({ name: 'the working tree', loaded: loadRegistry(folders.value, cwd) });
  }
  const files: FileWithSiblings[] = [];
  for (const path of folders.value) {
    const read = await filesOfSide(word, resolve(cwd, path), cwd);
    if (!read.ok) return read;
    files.push(...read.value);
  }
  return success({ name: word, loaded: loadFiles(files) });
}

async function filesOfSide(
  word: string,
  folder: string,
  cwd: string,
): Promise<Result<FileWithSiblings[], string>> {
  const commit = await commitOf(word, folder, asker);
  if (!commit.ok) return failure(`${commit.error}\nOr name a folder that holds a registry.`);
  // A registry that git ignores, an installed package for instance, is the same on both sides.
  const ignored = await gitText(folder, ['check-ignore', '--quiet', '--', folder]);
  return ignored.ok ? success(filesOfFolder(folder, cwd)) : filesAtCommit(commit.value, folder, cwd);
}
