import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareText } from './finding.ts';
import { type SourceText, sourceText } from './source-text.ts';

/** Largest file that is read, in bytes: the biggest honest profile is a trial of some 100 kB. */
export const largestFile = 1_048_576;

/** Deepest folder below the root of a registry: `machines/maker/model.yaml` needs two. */
const deepestFolder = 4;

export type FileProblem = 'missing' | 'symlink' | 'tooLarge' | 'notUtf8' | 'unreadable' | 'tooDeep';

/** A file that was read, or the reason why not. */
export type ReadFile =
  | { readonly ok: true; readonly source: SourceText }
  | {
      readonly ok: false;
      readonly path: string;
      readonly relativePath: string;
      readonly problem: FileProblem;
    };

/** A folder that holds a registry: where it is, and what the user calls it. */
export interface RegistryRoot {
  readonly folder: string;
  readonly shown: string;
}

/**
 * Reads every `.yaml` and `.yml` file of a registry, in an order that depends on no locale. Files outside of the
 * folders of the kinds are read too, so that a misspelled folder is reported and not passed over.
 */
export function readRegistryFiles(root: RegistryRoot): ReadFile[] {
  return readFolder(root, '', 0);
}

function readFolder(root: RegistryRoot, relative: string, depth: number): ReadFile[] {
  const names = listFolder(join(root.folder, relative));
  if (names === null) return [refused(root, relative, 'unreadable')];
  return names.flatMap((name): ReadFile[] => {
    const path = relative === '' ? name : `${relative}/${name}`;
    const stat = lstatSync(join(root.folder, path));
    if (stat.isSymbolicLink()) return [refused(root, path, 'symlink')];
    if (stat.isDirectory()) {
      return depth < deepestFolder ? readFolder(root, path, depth + 1) : [refused(root, path, 'tooDeep')];
    }
    return isProfileName(name) ? [readRegistryFile(root, path)] : [];
  });
}

/** Names in a folder; none where there is no folder, null where it cannot be read: that is no empty registry. */
function listFolder(path: string): string[] | null {
  try {
    return readdirSync(path).filter(isLookedAt).sort(compareText);
  } catch (error) {
    return isMissing(error) ? [] : null;
  }
}

/** Whether a file is a profile by its name. */
function isProfileName(name: string): boolean {
  return /\.ya?ml$/.test(name);
}

/** Whether a file or folder of that name belongs to a registry at all. */
function isLookedAt(name: string): boolean {
  return !name.startsWith('.') && name !== 'node_modules';
}

/** Whether a registry looks at a file at a path, by its folders and its name: what `readRegistryFiles` reads. */
export function isProfilePath(relativePath: string): boolean {
  const steps = relativePath.split('/');
  return steps.every(isLookedAt) && steps.length <= deepestFolder + 1 && isProfileName(steps.at(-1) ?? '');
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

/** A file of a registry whose bytes are known already, those of a commit for instance. */
export function fileOfBytes(root: RegistryRoot, relativePath: string, bytes: Uint8Array): ReadFile {
  if (bytes.length > largestFile) return refused(root, relativePath, 'tooLarge');
  const raw = decode(bytes);
  if (raw === null) return refused(root, relativePath, 'notUtf8');
  return { ok: true, source: sourceText(shown(root, relativePath), relativePath, raw) };
}

function decode(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** A file that is not read, with the reason. */
export function refused(root: RegistryRoot, relativePath: string, problem: FileProblem): ReadFile {
  return { ok: false, path: shown(root, relativePath), relativePath, problem };
}

function shown(root: RegistryRoot, relativePath: string): string {
  return join(root.shown, relativePath).replaceAll('\\', '/');
}
