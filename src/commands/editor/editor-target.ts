import { dirname, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rootOf } from '../../host/load-registry.ts';
import type { RegistryRoot } from '../../host/registry-files.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { kinds } from '../../registry/kind.ts';
import { isProfilePath } from '../../registry/registry-file.ts';
import { registryAbove } from '../check/check-target.ts';

/** Beside what an open file is judged. */
export interface EditorTarget {
  /** The folder that paths are shown from. */
  readonly cwd: string;
  /** Absolute folders of the registries. */
  readonly folders: readonly string[];
  /** Where the file stands: in one of these folders, or by itself. */
  readonly root: RegistryRoot;
  /** Path from there, with `/` between folders. */
  readonly relativePath: string;
}

/** What an editor has said about folders. */
export interface EditorFolders {
  /** Absolute folders that are open in the editor. */
  readonly workspace: readonly string[];
  /** Registries that the command line names. */
  readonly registry: readonly string[];
  /** The working directory, where no folder that is open holds a file. */
  readonly cwd: string;
}

/** Path of a file by its address; null for what is no file of this machine, an unsaved text without a name for instance. */
export function pathOfAddress(uri: string): string | null {
  try {
    return fileURLToPath(uri);
  } catch {
    return null;
  }
}

/**
 * The registry of an open file: one that is named, configured or in the folder that is open, or the one that its folders tell of. An
 * editor opens other YAML too, which is left alone unless its text names one of our kinds. Null for that.
 */
export function editorTarget(path: string, text: string, given: EditorFolders): EditorTarget | null {
  const cwd = longest(given.workspace.filter((folder) => isWithin(path, folder))) ?? given.cwd;
  const found = registryFolders(given.registry, cwd);
  const named = found.ok ? found.value : [];
  const owner = longest(named.filter((folder) => isWithin(path, folder)));
  if (owner !== null) return within(owner, named, path, cwd);
  if (!namesKind(text)) return null;
  const above = registryAbove(path);
  return above === null
    ? within(dirname(path), named, path, cwd)
    : within(above, [...named, above], path, cwd);
}

function within(folder: string, folders: readonly string[], path: string, cwd: string): EditorTarget | null {
  const relativePath = relative(folder, resolve(path)).replaceAll('\\', '/');
  if (!isProfilePath(relativePath)) return null;
  return { cwd, folders: [...new Set(folders)], root: rootOf(folder, cwd), relativePath };
}

const ownKind = new RegExp(`^kind:[ \\t]*["']?(?:${kinds.join('|')})["']?[ \\t]*(?:#.*)?\\r?$`, 'm');

function namesKind(text: string): boolean {
  return ownKind.test(text);
}

function isWithin(path: string, folder: string): boolean {
  return path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}

function longest(folders: readonly string[]): string | null {
  return [...folders].sort((one, other) => other.length - one.length)[0] ?? null;
}
