import { dirname, isAbsolute, relative, resolve } from 'node:path';
import { type FileWithSiblings, type LoadedRegistry, linkFiles } from '../registry/load-files.ts';
import { isSheetName, type ReadFile } from '../registry/registry-file.ts';
import { type Result, success } from '../result.ts';
import { type RegistryRoot, readRegistryFile, readRegistryFiles } from './registry-files.ts';
import { type RegistryProblem, registryFolders } from './registry-folders.ts';

/**
 * Reads the registries in one or several folders or installed packages, with what is wrong in them; later ones add to
 * earlier ones. With no name it reads those that package.json names, else the one in the folder `base`, from which
 * relative folders are taken too (by default the working directory). Problems: a place that holds no registry.
 */
export function loadRegistry(
  named: readonly string[] = [],
  base: string = process.cwd(),
): Result<LoadedRegistry, RegistryProblem> {
  const folders = registryFolders(named, base);
  return folders.ok ? success(loadFolders(folders.value, base)) : folders;
}

/**
 * Reads the registries in one or several folders; later ones add to earlier ones. Every problem is collected, and
 * one broken file hides no other. Relative folders are taken from `base` (the working directory by default).
 */
export function loadFolders(folders: readonly string[], base: string = process.cwd()): LoadedRegistry {
  return linkFiles(folders.flatMap((folder) => filesOfFolder(folder, base)));
}

/** The profile files of some folders, and single files from outside of them, with what stands beside each. */
export function filesOfFolders(
  folders: readonly string[],
  loose: readonly string[],
  base: string = process.cwd(),
): FileWithSiblings[] {
  const looseFiles = loose.map((path) => {
    const root = rootOf(dirname(path), base);
    return withSiblings(root, readRegistryFile(root, relative(root.folder, resolve(base, path))));
  });
  return [...folders.flatMap((folder) => filesOfFolder(folder, base)), ...looseFiles];
}

/** Folders inside the base are shown relative to it, whatever the user typed, so that reports are the same anywhere. */
export function rootOf(folder: string, base: string): RegistryRoot {
  const absolute = resolve(base, folder);
  const inside = relative(base, absolute);
  return { folder: absolute, shown: inside.startsWith('..') || isAbsolute(inside) ? absolute : inside };
}

/** The sheets of readings in a folder, which trials name. */
export function sheetsOfFolder(folder: string, base: string): ReadFile[] {
  return readRegistryFiles(rootOf(folder, base), isSheetName);
}

/** The profile files of a folder, with what stands beside them. */
export function filesOfFolder(folder: string, base: string): FileWithSiblings[] {
  const root = rootOf(folder, base);
  return readRegistryFiles(root).map((file) => withSiblings(root, file));
}

function withSiblings(root: RegistryRoot, file: ReadFile): FileWithSiblings {
  return { file, readSibling: (relativePath) => readRegistryFile(root, relativePath) };
}
