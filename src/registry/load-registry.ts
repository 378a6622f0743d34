import { dirname, isAbsolute, relative, resolve } from 'node:path';
import { compareFindings, type Finding } from './finding.ts';
import type { AnyProfile } from './profile.ts';
import { type ReadProfile, readProfile } from './read-profile.ts';
import { brokenKey, linkRegistry, type Registry } from './registry.ts';
import { type ReadFile, type RegistryRoot, readRegistryFile, readRegistryFiles } from './registry-files.ts';

/** A registry with what reading it has shown. */
export interface LoadedRegistry {
  readonly registry: Registry;
  /** Problems of form: syntax, shape, units. `checkRegistry` adds what the rules find. */
  readonly findings: readonly Finding[];
  /** Text of every file that was read, by its path, for showing the line of a finding. */
  readonly texts: ReadonlyMap<string, string>;
  /** Paths of all profile files, readable or not. */
  readonly files: readonly string[];
}

/**
 * Reads the registries in one or several folders; later ones add to earlier ones. Every problem is collected, and
 * one broken file hides no other. Relative folders are taken from `base` (the working directory by default).
 */
export function loadRegistry(folders: readonly string[], base: string = process.cwd()): LoadedRegistry {
  return loadFiles(folders.map((folder) => rootOf(folder, base)).flatMap(filesOfRoot));
}

/** Like `loadRegistry`, with single files from outside of the folders added. */
export function loadRegistryWith(
  folders: readonly string[],
  loose: readonly string[],
  base: string = process.cwd(),
): LoadedRegistry {
  const looseFiles = loose.map((path) => {
    const root = rootOf(dirname(path), base);
    return withSiblings(root, readRegistryFile(root, relative(root.folder, resolve(base, path))));
  });
  return loadFiles([...folders.map((folder) => rootOf(folder, base)).flatMap(filesOfRoot), ...looseFiles]);
}

/** A profile file, and how a file beside it is read: from a folder, or from the same commit. */
export interface FileWithSiblings {
  readonly file: ReadFile;
  readonly readSibling: (relativePath: string) => ReadFile;
}

function filesOfRoot(root: RegistryRoot): FileWithSiblings[] {
  return readRegistryFiles(root).map((file) => withSiblings(root, file));
}

function withSiblings(root: RegistryRoot, file: ReadFile): FileWithSiblings {
  return { file, readSibling: (relativePath) => readRegistryFile(root, relativePath) };
}

/** Folders inside the base are shown relative to it, whatever the user typed, so that reports are the same anywhere. */
export function rootOf(folder: string, base: string): RegistryRoot {
  const absolute = resolve(base, folder);
  const inside = relative(base, absolute);
  return { folder: absolute, shown: inside.startsWith('..') || isAbsolute(inside) ? absolute : inside };
}

/** The profile files of a folder, with what stands beside them. */
export function filesOfFolder(folder: string, base: string): FileWithSiblings[] {
  return filesOfRoot(rootOf(folder, base));
}

/** Like `loadRegistry`, from files that have been read already. */
export function loadFiles(files: readonly FileWithSiblings[]): LoadedRegistry {
  const read = files.map(readOne);
  const profiles = read.flatMap(({ profile }) => (profile === null ? [] : [profile]));
  const documents = read.flatMap(({ document }) => (document === null ? [] : [document]));
  const broken = read.flatMap(({ profile, identity }) =>
    profile === null && identity !== null ? [brokenKey(identity.kind, identity.id)] : [],
  );
  return {
    registry: linkRegistry(documents, profiles, new Set(broken)),
    findings: read.flatMap(({ findings }) => findings).sort(compareFindings),
    texts: new Map([...files.flatMap(({ file }) => textOf(file)), ...profiles.flatMap(attachmentText)]),
    files: files.map(({ file }) => (file.ok ? file.source.path : file.path)),
  };
}

function readOne({ file, readSibling }: FileWithSiblings): ReadProfile {
  const folder = dirname(file.ok ? file.source.relativePath : file.relativePath);
  return readProfile(file, (name) => readSibling(`${folder}/${name}`));
}

function textOf(file: ReadFile): (readonly [string, string])[] {
  return file.ok ? [[file.source.path, file.source.text]] : [];
}

function attachmentText({ attachment }: AnyProfile): (readonly [string, string])[] {
  return attachment === null ? [] : textOf(attachment);
}
