import { type CharacterEncoding, decodeText } from '../text/decode-text.ts';
import { pathIn } from './relative-path.ts';
import { type SourceText, sourceText } from './source-text.ts';

/** Largest file that is read, in bytes: the biggest honest profile is a trial of some 100 kB. */
export const largestFile = 1_048_576;

/** Deepest folder below the root of a registry: `machines/maker/model.yaml` needs two. */
export const deepestFolder = 4;

export type FileProblem =
  | 'missing'
  | 'symlink'
  | 'tooLarge'
  | 'notUtf8'
  | 'unreadable'
  | 'closedFolder'
  | 'tooDeep'
  | 'badName'
  | 'repository';

/** A file that was read, or the reason why not. */
export type ReadFile =
  | { readonly ok: true; readonly source: SourceText }
  | {
      readonly ok: false;
      readonly path: string;
      readonly relativePath: string;
      readonly problem: FileProblem;
    };

/** Path of a file as the user would type it. */
export function pathOfFile(file: ReadFile): string {
  return file.ok ? file.source.path : file.path;
}

/** Path of a file from the root of its registry. */
export function relativePathOfFile(file: ReadFile): string {
  return file.ok ? file.source.relativePath : file.relativePath;
}

/** What the user calls the folder of a registry: empty for the one that paths are shown from. */
export interface ShownRoot {
  readonly shown: string;
}

/** Whether a file is a profile by its name. */
export function isProfileName(name: string): boolean {
  return /\.ya?ml$/.test(name);
}

/** Whether a file can hold the readings of a trial, by its name. */
export function isSheetName(name: string): boolean {
  return name.endsWith('.csv');
}

/** Whether a file or folder of that name belongs to a registry at all. */
export function isLookedAt(name: string): boolean {
  return !name.startsWith('.') && name !== 'node_modules';
}

/** What the decoder of a system puts where a name is no UTF-8; such a file cannot be found again by its name. */
const undecoded = '\uFFFD';

/** Names that stand for devices on some systems, with any ending (Microsoft, "Naming files, paths, and namespaces"). */
const device = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i;

/** Whether a file or folder of that name cannot stand on every system. */
export function isBadName(name: string): boolean {
  return (
    name.includes(undecoded) || device.test(name) || /[<>:"|?*\\\p{Cc}]/u.test(name) || /[. ]$/.test(name)
  );
}

/** Whether the names in a folder are those inside of a git repository, which git may take it for. */
export function isRepository(names: readonly string[]): boolean {
  return ['HEAD', 'objects', 'refs'].every((name) => names.includes(name));
}

/** Whether a registry looks at a file at a path, by its folders and its name. */
export function isProfilePath(relativePath: string): boolean {
  const steps = relativePath.split('/');
  return steps.every(isLookedAt) && steps.length <= deepestFolder + 1 && isProfileName(steps.at(-1) ?? '');
}

/** A file of a registry whose bytes are known already, those of a commit for instance. Sheets may have other encodings than UTF-8. */
export function fileOfBytes(root: ShownRoot, relativePath: string, bytes: Uint8Array): ReadFile {
  if (relativePath.split('/').some(isBadName)) return refused(root, relativePath, 'badName');
  if (bytes.length > largestFile) return refused(root, relativePath, 'tooLarge');
  const decoded = isSheetName(relativePath) ? decodeText(bytes) : decode(bytes);
  if (decoded === null) return refused(root, relativePath, 'notUtf8');
  return readText(root, relativePath, decoded.text, decoded.encoding);
}

/** A file of a registry whose text is known already. */
export function fileOfText(root: ShownRoot, relativePath: string, text: string): ReadFile {
  if (relativePath.split('/').some(isBadName)) return refused(root, relativePath, 'badName');
  // No character takes more than three bytes a code unit, so that most texts need no counting.
  const isLarge = 3 * text.length > largestFile && new TextEncoder().encode(text).length > largestFile;
  return isLarge ? refused(root, relativePath, 'tooLarge') : readText(root, relativePath, text);
}

function readText(
  root: ShownRoot,
  relativePath: string,
  raw: string,
  encoding: CharacterEncoding = 'UTF-8',
): ReadFile {
  return { ok: true, source: sourceText(shown(root, relativePath), relativePath, raw, encoding) };
}

const strictDecoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function decode(bytes: Uint8Array): ReturnType<typeof decodeText> {
  try {
    return { text: strictDecoder.decode(bytes), encoding: 'UTF-8' };
  } catch {
    return null;
  }
}

/** A file that is not read, with the reason. */
export function refused(root: ShownRoot, relativePath: string, problem: FileProblem): ReadFile {
  return { ok: false, path: shown(root, relativePath), relativePath, problem };
}

function shown(root: ShownRoot, relativePath: string): string {
  return pathIn(root.shown, relativePath).replaceAll('\\', '/') || '.';
}
