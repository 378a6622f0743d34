import { compareFindings, compareText, type Finding } from './finding.ts';
import type { AnyProfile } from './profile.ts';
import { type ReadAttachment, type ReadProfile, readProfile } from './read-profile.ts';
import { brokenKey, linkRegistry, type Registry } from './registry.ts';
import {
  deepestFolder,
  fileOfText,
  isLookedAt,
  isProfilePath,
  pathOfFile,
  type ReadFile,
  refused,
  relativePathOfFile,
} from './registry-file.ts';
import { pathOfSibling } from './relative-path.ts';

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

/** The texts of a registry that stands in no folder: in a browser, an archive or a data base. */
export interface RegistryTexts {
  /** What findings call the folder of the registry, `profiles` for instance; empty to show paths from its root. */
  readonly folder: string;
  /** Every file by its path from the root, with `/` between folders: the profiles and the CSV sheets of trials. */
  readonly texts: ReadonlyMap<string, string>;
}

/**
 * Reads one or several registries from memory; later ones add to earlier ones. It touches nothing but the texts, so that
 * it runs in a browser too. Every problem is collected, and one broken file hides no other. `parse` is how each file is parsed.
 */
export function loadFiles(
  registries: readonly RegistryTexts[],
  parse: ParseFile = parseFile,
): LoadedRegistry {
  return linkFiles(registries.flatMap(filesOfTexts), parse);
}

function filesOfTexts({ folder, texts }: RegistryTexts): FileWithSiblings[] {
  const root = { shown: folder };
  const readSibling = (path: string): ReadFile => {
    const text = texts.get(path);
    return text === undefined ? refused(root, path, 'missing') : fileOfText(root, path, text);
  };
  return profilePaths(texts.keys()).map((path) => ({
    file: texts.has(path) ? readSibling(path) : refused(root, path, 'tooDeep'),
    readSibling,
  }));
}

/** Paths of the profiles, and of folders that lie too deep, in the order in which folders are read. */
function profilePaths(paths: Iterable<string>): string[] {
  const found = [...paths].flatMap((path) => {
    const above = path.split('/').slice(0, deepestFolder + 1);
    const isDeep = path !== above.join('/') && above.every(isLookedAt);
    return isDeep ? [above.join('/')] : isProfilePath(path) ? [path] : [];
  });
  return [...new Set(found)].sort(compareSteps);
}

/** Order by the names of folders and files, step by step. */
function compareSteps(a: string, b: string): number {
  return compareText(a.replaceAll('/', '\0'), b.replaceAll('/', '\0'));
}

/** A profile file, and how a file beside it is read: from memory, from a folder, or from the same commit. */
export interface FileWithSiblings {
  readonly file: ReadFile;
  readonly readSibling: (relativePath: string) => ReadFile;
}

/** How a file is parsed. */
export type ParseFile = (file: FileWithSiblings) => ReadProfile;

/** The registry that files make which have been read already; `parse` is how each of them is parsed. */
export function linkFiles(files: readonly FileWithSiblings[], parse: ParseFile = parseFile): LoadedRegistry {
  const read = files.map(parse);
  const profiles = read.flatMap(({ profile }) => (profile === null ? [] : [profile]));
  const documents = read.flatMap(({ document }) => (document === null ? [] : [document]));
  const broken = read.flatMap(({ profile, identity }) =>
    profile === null && identity !== null ? [brokenKey(identity.kind, identity.id)] : [],
  );
  return {
    registry: linkRegistry(documents, profiles, new Set(broken)),
    findings: read.flatMap(({ findings }) => findings).sort(compareFindings),
    texts: new Map([...files.flatMap(({ file }) => textOf(file)), ...profiles.flatMap(attachmentText)]),
    files: files.map(({ file }) => pathOfFile(file)),
  };
}

/** A parser that parses a file again only if its text, or that of its readings, has changed since it last did. */
export function parsingChanges(): ParseFile {
  const known = new Map<string, { readonly text: string; readonly parsed: ReadProfile }>();
  return (given) => {
    const { file, readSibling } = given;
    if (!file.ok) return parseFile(given);
    const { path, text } = file.source;
    const before = known.get(path);
    if (before?.text === text && isCurrent(before.parsed, readSibling)) return before.parsed;
    const parsed = parseFile(given);
    known.set(path, { text, parsed });
    return parsed;
  };
}

function isCurrent({ profile }: ReadProfile, readSibling: FileWithSiblings['readSibling']): boolean {
  const readings = profile?.attachment ?? null;
  if (readings === null) return true;
  const now = readSibling(relativePathOfFile(readings));
  return readings.ok && now.ok && readings.source.text === now.source.text;
}

/** Parses one file, and reads the sheet that it names. */
export function parseFile(each: FileWithSiblings): ReadProfile {
  return readProfile(each.file, readingsBeside(each));
}

/** Reads the sheet that a file names. */
export function readingsBeside({ file, readSibling }: FileWithSiblings): ReadAttachment {
  return (name) => readSibling(pathOfSibling(relativePathOfFile(file), name));
}

/** The text of a file by its path, if it could be read. */
export function textOf(file: ReadFile): (readonly [string, string])[] {
  return file.ok ? [[file.source.path, file.source.text]] : [];
}

function attachmentText({ attachment }: AnyProfile): (readonly [string, string])[] {
  return attachment === null ? [] : textOf(attachment);
}
