import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { kindFolders } from '../registry/kind.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { type ConfigProblem, configuredRegistries, packageFolder } from './configured-registries.ts';

/** Why there is no registry in a place. */
type FolderProblem = Problem<'noFolder' | 'noRegistry'>;

/** Why the registries that are asked for cannot be found. */
export type RegistryProblem = FolderProblem | ConfigProblem;

/** Folder of the registry at a path or in an installed package: the folder itself, or `profiles` below it. */
export function registryFolder(path: string, cwd: string): Result<string, FolderProblem> {
  const here = resolve(cwd, path);
  const absolute = existsSync(here) ? here : packageFolder(path, cwd);
  if (absolute === null) {
    return refusal(
      'noFolder',
      `There is no folder ${path}`,
      'Check the spelling, or name an installed package.',
    );
  }
  if (holdsKinds(absolute)) return success(absolute);
  const below = join(absolute, 'profiles');
  if (holdsKinds(below)) return success(below);
  const folders = Object.values(kindFolders).join(', ');
  const where = path === '.' ? 'this folder' : path;
  return refusal(
    'noRegistry',
    `There is no registry in ${where}: neither it nor its folder "profiles" holds any of ${folders}`,
    'Name another with --registry, or begin one with `meltbounds init`.',
  );
}

/**
 * Folders of the registries that the user named, else of those that package.json names, else of the one in the working
 * directory. Later ones rest on earlier ones; the last is the team's own.
 */
export function registryFolders(named: readonly string[], cwd: string): Result<string[], RegistryProblem> {
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
