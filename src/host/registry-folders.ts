import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { kindFolders } from '../registry/kind.ts';
import { failure, type Result, success } from '../result.ts';
import { configuredRegistries, packageFolder } from './configured-registries.ts';

/** Folder of the registry at a path or in an installed package: the folder itself, or `profiles` below it. */
export function registryFolder(path: string, cwd: string): Result<string, string> {
  const here = resolve(cwd, path);
  const absolute = existsSync(here) ? here : packageFolder(path, cwd);
  if (absolute === null) return failure(`There is no folder ${path}.`);
  if (holdsKinds(absolute)) return success(absolute);
  const below = join(absolute, 'profiles');
  if (holdsKinds(below)) return success(below);
  const folders = Object.values(kindFolders).join(', ');
  const where = path === '.' ? 'this folder' : path;
  return failure(
    `There is no registry in ${where}: neither it nor its folder "profiles" holds any of ${folders}.`,
  );
}

/**
 * Folders of the registries that the user named, else of those that package.json names, else of the one in the working
 * directory. Later ones rest on earlier ones; the last is the team's own.
 */
export function registryFolders(named: readonly string[], cwd: string): Result<string[], string> {
  const configured = named.length > 0 ? success(named) : configuredRegistries(cwd);
  if (!configured.ok) return configured;
  const folders: string[] = [];
  for (const path of configured.value ?? ['.']) {
    const found = registryFolder(path, cwd);
    if (!found.ok) return found;
    folders.push(found.value);
  }
  return success([...new Set(folders)]);
}

function holdsKinds(folder: string): boolean {
  return Object.values(kindFolders).some((name) => existsSync(join(folder, name)));
}
