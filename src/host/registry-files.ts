import { type Dirent, lstatSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { compareText } from '../registry/finding.ts';
import {
  deepestFolder,
  type FileProblem,
  fileOfBytes,
  isBadName,
  isLookedAt,
  isProfileName,
  isRepository,
  largestFile,
  type ReadFile,
  refused,
  type ShownRoot,
} from '../registry/registry-file.ts';
import { noLink, readPlainFile } from './read-plain-file.ts';

/** A folder that holds a registry: where it is, and what the user calls it. */
export interface RegistryRoot extends ShownRoot {
  /** Absolute path. */
  readonly folder: string;
}

/** What is found on the way through a registry: a file, or the reason why something is passed over. */
interface FoundFile {
  /** From the root, with `/` between folders. */
  readonly path: string;
  readonly problem: FileProblem | null;
}

/**
 * Reads every `.yaml` and `.yml` file of a registry, or those that are wanted by their names, in an order that depends on no locale. Files outside of the
 * folders of the kinds are read too, so that a misspelled folder is reported and not passed over.
 */
export function readRegistryFiles(root: RegistryRoot, isWanted = isProfileName): ReadFile[] {
  return foundFiles(root.folder, '', 0, isWanted).map(({ path, problem }) =>
    problem === null ? readRegistryFile(root, path) : refused(root, path, problem),
  );
}

/** Paths from the root of what `readRegistryFiles` reads, or would if it could, with `/` between folders. */
export function registryFileNames(folder: string, isWanted: (name: string) => boolean): string[] {
  return foundFiles(folder, '', 0, isWanted).map(({ path }) => path);
}

function foundFiles(
  root: string,
  relative: string,
  depth: number,
  isWanted: (name: string) => boolean,
): FoundFile[] {
  const entries = listFolder(join(root, relative));
  if (!Array.isArray(entries)) {
    const isNone = depth === 0 && entries === 'missing';
    return isNone ? [] : [{ path: relative, problem: entries }];
  }
  if (isRepository(entries.map(({ name }) => name))) return [{ path: relative, problem: 'repository' }];
  return entries.flatMap((entry): FoundFile[] => {
    const path = relative === '' ? entry.name : `${relative}/${entry.name}`;
    if (entry.isSymbolicLink()) return [{ path, problem: 'symlink' }];
    if (!entry.isDirectory()) return isWanted(entry.name) ? [foundFile(entry, path)] : [];
    if (isBadName(entry.name)) return [{ path, problem: 'badName' }];
    return depth < deepestFolder
      ? foundFiles(root, path, depth + 1, isWanted)
      : [{ path, problem: 'tooDeep' }];
  });
}

/** A pipe or a device is not even opened. */
function foundFile(entry: Dirent, path: string): FoundFile {
  if (isBadName(entry.name)) return { path, problem: 'badName' };
  return { path, problem: entry.isFile() ? null : 'unreadable' };
}

/** What is in a folder, or why it cannot be read: that is no empty registry. */
function listFolder(path: string): Dirent[] | FileProblem {
  try {
    const entries = readdirSync(path, { withFileTypes: true });
    // To list a folder is one permission, to enter it another.
    lstatSync(`${path}/.`);
    return entries
      .filter(({ name }) => isLookedAt(name))
      .sort((one, other) => compareText(one.name, other.name));
  } catch (error) {
    if (isForbidden(error)) return 'closedFolder';
    return problemOf(error);
  }
}

/** Whether a user may enter a folder; also where there is none. */
export function canEnter(folder: string): boolean {
  return isAllowed(() => lstatSync(`${folder}/.`));
}

/** Whether there is a folder that the user may not list, or may not enter: then nothing can be said of what is in it. */
export function isClosed(folder: string): boolean {
  return !canEnter(folder) || !isAllowed(() => readdirSync(folder));
}

function isAllowed(look: () => unknown): boolean {
  try {
    look();
    return true;
  } catch (error) {
    return !isForbidden(error);
  }
}

function isForbidden(error: unknown): boolean {
  return error instanceof Error && 'code' in error && (error.code === 'EACCES' || error.code === 'EPERM');
}

/** Reads one file of a registry; links are not followed, since they may lead out of it. */
export function readRegistryFile(root: RegistryRoot, relativePath: string): ReadFile {
  try {
    const read = readPlainFile(join(root.folder, relativePath), largestFile, noLink);
    if (read.ok) return fileOfBytes(root, relativePath, read.value);
    return refused(root, relativePath, read.error === 'tooLarge' ? 'tooLarge' : 'unreadable');
  } catch (error) {
    return refused(root, relativePath, problemOf(error));
  }
}

/** What the system says of a file; a link that is not followed is a loop to it. */
function problemOf(error: unknown): FileProblem {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'ELOOP') return 'symlink';
  return code === 'ENOENT' ? 'missing' : 'unreadable';
}
