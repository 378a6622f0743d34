import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareText } from './finding.ts';
import { type SourceText, sourceText } from './source-text.ts';

/** Largest file that is read, in bytes: the biggest honest profile is a trial of some 100 kB. */
const largestFile = 1_048_576;

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
    return /\.ya?ml$/.test(name) ? [readRegistryFile(root, path)] : [];
  });
}

/** Names in a folder; none where there is no folder, null where it cannot be read: that is no empty registry. */
function listFolder(path: string): string[] | null {
  try {
    return readdirSync(path)
      .filter((name) => !name.startsWith('.') && name !== 'node_modules')
      .sort(compareText);
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
    const raw = decode(readFileSync(path));
    if (raw === null) return refused(root, relativePath, 'notUtf8');
    return { ok: true, source: sourceText(shown(root, relativePath), relativePath, raw) };
  } catch (error) {
    return refused(root, relativePath, isMissing(error) ? 'missing' : 'unreadable');
  }
}

function decode(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

function refused(root: RegistryRoot, relativePath: string, problem: FileProblem): ReadFile {
  return { ok: false, path: shown(root, relativePath), relativePath, problem };
}

function shown(root: RegistryRoot, relativePath: string): string {
  return join(root.shown, relativePath).replaceAll('\\', '/');
}
