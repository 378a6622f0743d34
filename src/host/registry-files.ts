import { type Dirent, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareText } from '../registry/finding.ts';
import {
  deepestFolder,
  fileOfBytes,
  isLookedAt,
  isProfileName,
  largestFile,
  type ReadFile,
  refused,
  type ShownRoot,
} from '../registry/registry-file.ts';

/** A folder that holds a registry: where it is, and what the user calls it. */
export interface RegistryRoot extends ShownRoot {
  /** Absolute path. */
  readonly folder: string;
}

/**
 * Reads every `.yaml` and `.yml` file of a registry, or those that are wanted by their names, in an order that depends on no locale. Files outside of the
 * folders of the kinds are read too, so that a misspelled folder is reported and not passed over.
 */
export function readRegistryFiles(root: RegistryRoot, isWanted = isProfileName): ReadFile[] {
  return readFolder(root, '', 0, isWanted);
}

function readFolder(
  root: RegistryRoot,
  relative: string,
  depth: number,
  isWanted: (name: string) => boolean,
): ReadFile[] {
  const names = listFolder(join(root.folder, relative));
  if (names === null) return [refused(root, relative, 'unreadable')];
  return names.flatMap((entry): ReadFile[] => {
    const { name } = entry;
    const path = relative === '' ? name : `${relative}/${name}`;
    if (entry.isSymbolicLink()) return [refused(root, path, 'symlink')];
    if (entry.isDirectory()) {
      return depth < deepestFolder
        ? readFolder(root, path, depth + 1, isWanted)
        : [refused(root, path, 'tooDeep')];
    }
    return isWanted(name) ? [readRegistryFile(root, path)] : [];
  });
}

/** What is in a folder; none where there is no folder, null where it cannot be read: that is no empty registry. */
function listFolder(path: string): Dirent[] | null {
  try {
    return readdirSync(path, { withFileTypes: true })
      .filter(({ name }) => isLookedAt(name))
      .sort((one, other) => compareText(one.name, other.name));
  } catch (error) {
    return isMissing(error) ? [] : null;
  }
}

function isMissing(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT';
}

/** Reads one file of a registry; links are not followed, since they may lead out of it. */
export function readRegistryFile(root: RegistryRoot, relativePath: string): ReadFile {
  const path = join(root.folder, relativePath);
  try {
    const stat = lstatSync(path);
    if (stat.isSymbolicLink()) return refused(root, relativePath, 'symlink');
    if (!stat.isFile()) return refused(root, relativePath, 'unreadable');
    if (stat.size > largestFile) return refused(root, relativePath, 'tooLarge');
    return fileOfBytes(root, relativePath, readFileSync(path));
  } catch (error) {
    return refused(root, relativePath, isMissing(error) ? 'missing' : 'unreadable');
  }
}
