import { existsSync, statSync } from 'node:fs';
import { basename, dirname, resolve, sep } from 'node:path';
import { configuredRegistries } from '../../host/configured-registries.ts';
import { noSuchPath } from '../../host/file-error.ts';
import { registryFolder, registryFolders } from '../../host/registry-folders.ts';
import { kindOfFolder } from '../../registry/kind.ts';
import { type Problem, type Result, success } from '../../result.ts';

/** What `check` was asked to look at. */
export interface CheckTarget {
  /** Absolute folders of the registries to read. */
  readonly folders: readonly string[];
  /** Absolute paths of single files that belong to no registry folder. */
  readonly loose: readonly string[];
  /** Absolute paths whose findings are wanted; null for all. */
  readonly only: readonly string[] | null;
}

/**
 * Finds the registry that each path belongs to. With no path it is the last of those that are named or configured,
 * which rests on the others, or all of them.
 */
export function checkTarget(
  paths: readonly string[],
  { registry: registries, all }: { readonly registry: readonly string[]; readonly all?: boolean },
  cwd: string,
): Result<CheckTarget, Problem> {
  if (paths.length === 0) {
    const folders = registryFolders(registries, cwd);
    if (!folders.ok) return folders;
    return success({ folders: folders.value, loose: [], only: all ? null : folders.value.slice(-1) });
  }
  const configured = registries.length > 0 ? success(registries) : configuredRegistries(cwd);
  if (!configured.ok) return configured;
  const named = configured.value === null ? success([]) : registryFolders(configured.value, cwd);
  if (!named.ok) return named;
  const missing = paths.find((path) => !existsSync(resolve(cwd, path)));
  if (missing !== undefined) return noSuchPath(missing);
  const owners = paths.map((path) => ownerOf(resolve(cwd, path)));
  const folders = new Set([...named.value, ...owners.flatMap(({ root }) => (root === null ? [] : [root]))]);
  const loose = owners.flatMap(({ root, only }) => (root === null ? [only] : []));
  if (folders.size === 0) {
    // A file that belongs to no registry is judged beside the one in the working directory, if there is one.
    const here = registryFolder('.', cwd);
    if (here.ok) folders.add(here.value);
  }
  const outside = loose.filter((file) => ![...folders].some((folder) => file.startsWith(folder + sep)));
  return success({ folders: [...folders], loose: outside, only: owners.map(({ only }) => only) });
}

/** A kind folder is at most two folders above its profiles; one further up has its name by chance. */
const kindFolderAbove = 2;

/** The registry that a path belongs to, if any, and the path whose findings are then wanted. */
function ownerOf(absolute: string): { readonly root: string | null; readonly only: string } {
  const isFolder = statSync(absolute).isDirectory();
  const below = isFolder ? registryFolder(absolute, absolute) : null;
  if (below?.ok) return { root: below.value, only: below.value };
  return { root: registryAbove(absolute) ?? (isFolder ? absolute : null), only: absolute };
}

/** The folder of the registry that a path lies in by the names of the folders above it; null where they tell of none. */
export function registryAbove(absolute: string): string | null {
  let path = absolute;
  for (let up = 0; up <= kindFolderAbove; up++) {
    if (kindOfFolder(basename(path)) !== null) return dirname(path);
    path = dirname(path);
  }
  return null;
}
