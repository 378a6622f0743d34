import { existsSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import { kindFolders } from '../registry/kind.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { type ConfigProblem, configuredRegistries, packageFolder } from './configured-registries.ts';
import { leadsOut } from './inside.ts';
import { canEnter, isClosed } from './registry-files.ts';

/** Why there is no registry in a place. */
type FolderProblem = Problem<'noFolder' | 'noRegistry' | 'linkElsewhere' | 'closedFolder'>;

/** Why the registries that are asked for cannot be found. */
export type RegistryProblem = FolderProblem | ConfigProblem;

/** Folder of the registry at a path or in an installed package: the folder itself, or `profiles` below it. */
export function registryFolder(path: string, cwd: string): Result<string, FolderProblem> {
  const here = resolve(cwd, path);
  const isHere = existsSync(here);
  const absolute = isHere ? here : packageFolder(path, cwd);
  if (absolute === null) {
    return refusal(
      'noFolder',
      `There is no folder ${path}`,
      'Check the spelling, or name an installed package.',
    );
  }
  // Packages are put where they are by whoever installs them, often by a link.
  if (isHere && !here.split(sep).includes('node_modules') && leadsOut(here, cwd)) return linkOut(path);
  if (holdsKinds(absolute)) return isClosed(absolute) ? closedFolder(path) : success(absolute);
  if (!canEnter(absolute)) return closedFolder(path);
  const below = join(absolute, 'profiles');
  if (isClosed(below)) return closedFolder(join(path, 'profiles'));
  if (holdsKinds(below)) return leadsOut(below, absolute) ? linkOut(join(path, 'profiles')) : success(below);
  if (isClosed(absolute)) return closedFolder(path);
  return noRegistry(path);
}

function noRegistry(path: string) {
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

function closedFolder(path: string) {
  return refusal(
    'closedFolder',
    `The folder ${printable(path)} cannot be read: you may not list it, or not enter it`,
    'Ask for both permissions, or name another folder with --registry.',
  );
}

function linkOut(path: string) {
  return refusal(
    'linkElsewhere',
    `The folder ${printable(path)} is a link that leads elsewhere, and a registry is read where it stands`,
    'Name the folder that it leads to, if that is what you mean.',
  );
}

function holdsKinds(folder: string): boolean {
  return Object.values(kindFolders).some((name) => existsSync(join(folder, name)));
}
