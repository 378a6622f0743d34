import { dirname, resolve, sep } from 'node:path';
import { type ChangedFile, changedFiles } from '../../host/changed-files.ts';
import { affectedPaths } from '../../registry/dependants.ts';
import { identityOfPath } from '../../registry/kind.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import { type Problem, type Result, success } from '../../result.ts';
import type { CheckTarget } from './check-target.ts';
import type { CheckedFiles } from './checked-files.ts';

/** Which of the files that were read the user wants to hear about. */
interface CheckScope {
  readonly wantsFile: (file: string) => boolean;
}

/** The files under the paths asked for, of these only what a change since a commit affects, if one is named. */
export async function scopeOf(
  files: CheckedFiles,
  { folders, loose, only }: CheckTarget,
  base: string | undefined,
  cwd: string,
): Promise<Result<CheckScope, Problem>> {
  const isAsked = (file: string) => only === null || isWithin(resolve(cwd, file), only);
  if (base === undefined) return success({ wantsFile: isAsked });
  // An installed package is no work of this repository, and may lie outside of it.
  const worked = folders.filter((folder) => !folder.split(sep).includes('node_modules'));
  const changed = await changedFiles(base, [...worked, ...loose.map((file) => dirname(file))]);
  if (!changed.ok) return changed;
  const isAffected = affectedBy(files.loaded(), changed.value, cwd);
  return success({ wantsFile: (file) => isAsked(file) && isAffected(file) });
}

function affectedBy(
  { registry }: LoadedRegistry,
  changed: readonly ChangedFile[],
  cwd: string,
): (file: string) => boolean {
  const paths = new Set(changed.map(({ path }) => path));
  const isChanged = (file: string) => paths.has(resolve(cwd, file));
  const identities = changed.flatMap(({ relativePath }) => identityOfPath(relativePath) ?? []);
  const affected = affectedPaths(registry, { isChanged, identities });
  return (file) => affected.has(file) || isChanged(file);
}

function isWithin(file: string, folders: readonly string[]): boolean {
  return folders.some((folder) => file === folder || file.startsWith(folder + sep));
}
