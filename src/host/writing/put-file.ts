import {
  closeSync,
  existsSync,
  fchmodSync,
  fchownSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  renameSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { removeQuietly } from './leftovers.ts';
import { markedName, newMark } from './writer.ts';

/** Every file of the program's goes through these functions. They throw what the system says. */

/** Puts a file in its place, over one that is there already, whose owner and permissions it keeps. It must be under `mark`'s lock. */
export function replaceFile(path: string, data: string | Uint8Array, mark: string): void {
  const before = statSync(path, { throwIfNoEntry: false });
  putBeside(path, data, before ?? null, (beside) => {
    holdStill(dirname(path), mark);
    renameSync(beside, path);
  });
  syncFolder(dirname(path));
}

/** Puts a file where nothing stands, not even a link; EEXIST if something does. The lock of `mark` is in `locked`. */
export function createFile(path: string, data: string | Uint8Array, mark: string, locked: string): void {
  putBeside(path, data, null, (beside) => {
    holdStill(locked, mark);
    linkOrRename(beside, path);
  });
  syncFolder(dirname(path));
}

/** Puts a folder where none is, with all of its files, names and contents; ENOTEMPTY if something stands there. */
export function createFolder(
  path: string,
  files: readonly (readonly [string, string | Uint8Array])[],
  mark: string,
): void {
  const beside = partBeside(path);
  try {
    mkdirSync(beside);
    for (const [name, data] of files) {
      const file = join(beside, name);
      mkdirSync(dirname(file), { recursive: true });
      writeBytes(file, data, 0o666, null, true);
    }
    syncFolder(beside);
    holdStill(dirname(path), mark);
    renameSync(beside, path);
  } finally {
    removeQuietly(beside);
  }
  syncFolder(dirname(path));
}

/** Makes a folder beside or in another one, where nobody looks, for files that come piece by piece, and writes these; their names. */
export function gatherParts(
  beside: string,
  parts: Iterable<{ readonly name: string; readonly bytes: Uint8Array }>,
): string[] {
  const files = new Map<string, number>();
  mkdirSync(beside);
  try {
    for (const { name, bytes } of parts) {
      const file = files.get(name) ?? openSync(join(beside, name), 'wx', 0o666);
      files.set(name, file);
      writeFileSync(file, bytes);
    }
    for (const file of files.values()) fsyncSync(file);
  } finally {
    for (const file of files.values()) closeSync(file);
  }
  syncFolder(beside);
  return [...files.keys()];
}

/** Puts a file where others lie ready, in whatever folder of theirs. After a power cut it may be gone. */
export function layReady(path: string, data: string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeBytes(path, data, 0o666, null, false);
}

/** Moves a file that lies ready to its place, over one that is there already, whose owner and permissions it keeps. It must be under `mark`'s lock. */
export function placeFile(ready: string, path: string, mark: string): void {
  moveToPlace(ready, path, mark);
  syncFolder(dirname(path));
}

/** The same for files of one folder by their names, which last once all are there; the lock of `mark` is in `locked`. */
export function placeFiles(
  ready: string,
  folder: string,
  names: readonly string[],
  { mark, locked }: { readonly mark: string; readonly locked: string },
): void {
  for (const name of names) moveToPlace(join(ready, name), join(folder, name), mark, locked);
  syncFolder(folder);
}

function moveToPlace(ready: string, path: string, mark: string, locked = dirname(path)): void {
  const before = statSync(path, { throwIfNoEntry: false });
  if (before !== undefined) {
    const file = openSync(ready, 'r+');
    try {
      giveTo(file, before);
    } finally {
      closeSync(file);
    }
  }
  holdStill(locked, mark);
  renameSync(ready, path);
}

/** Moves a folder that lies ready to its place; ENOTEMPTY if something stands there. It must be under `mark`'s lock. */
export function placeFolder(ready: string, path: string, mark: string): void {
  holdStill(dirname(path), mark);
  renameSync(ready, path);
  syncFolder(dirname(path));
}

/**
 * Puts a file whose loss costs nothing but time in its place, without a lock: of two writers the last one's stays. After
 * a power cut it may be gone.
 */
export function keepFile(
  path: string,
  data: string | Uint8Array,
  { isPrivate }: { isPrivate: boolean },
): void {
  mkdirSync(dirname(path), { recursive: true, mode: isPrivate ? 0o700 : 0o777 });
  const beside = partBeside(path);
  try {
    writeBytes(beside, data, isPrivate ? 0o600 : 0o666, null, false);
    renameSync(beside, path);
  } finally {
    removeQuietly(beside);
  }
}

function putBeside(
  path: string,
  data: string | Uint8Array,
  before: Stats | null,
  put: (beside: string) => void,
): void {
  const beside = partBeside(path);
  try {
    writeBytes(beside, data, before?.mode ?? 0o666, before, true);
    put(beside);
  } finally {
    removeQuietly(beside);
  }
}

function writeBytes(
  path: string,
  data: string | Uint8Array,
  mode: number,
  owner: Stats | null,
  isDurable: boolean,
): void {
  const file = openSync(path, 'wx', mode & 0o7777);
  try {
    // Unlike a single write it goes on where a disk has taken a part.
    writeFileSync(file, data);
    if (owner !== null) giveTo(file, owner);
    if (isDurable) fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A name of its own each time: an earlier part may have refused to go. */
export function partBeside(path: string): string {
  return join(dirname(path), markedName(newMark(), 'part'));
}

/** Owner and permissions of the file that is replaced, as far as they can be given. */
function giveTo(file: number, { uid, gid, mode }: Stats): void {
  for (const give of [() => fchownSync(file, uid, gid), () => fchmodSync(file, mode & 0o7777)]) {
    try {
      give();
    } catch (error) {
      if (!isOneOf(error, ['EPERM', 'EINVAL', 'ENOSYS'])) throw error;
    }
  }
}

/** A run that was stopped for so long that others took its lock for one of the dead must not write any more. */
function holdStill(locked: string, mark: string): void {
  if (existsSync(join(locked, markedName(mark, 'lock')))) return;
  throw Object.assign(new Error('the lock is gone'), { code: 'ESTALE' });
}

/** A link is made only where nothing stands. File systems without links have nothing better than to look first. */
function linkOrRename(beside: string, path: string): void {
  try {
    linkSync(beside, path);
  } catch (error) {
    if (!isOneOf(error, ['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'])) throw error;
    if (existsSync(path)) throw Object.assign(new Error('something is there'), { code: 'EEXIST' });
    renameSync(beside, path);
  }
}

/** A name lasts when its folder has been written. Some systems cannot, and then do it by themselves. */
function syncFolder(folder: string): void {
  try {
    const opened = openSync(folder, 'r');
    try {
      fsyncSync(opened);
    } finally {
      closeSync(opened);
    }
  } catch {
    // The file itself is written.
  }
}

function isOneOf(error: unknown, codes: readonly string[]): boolean {
  return error instanceof Error && 'code' in error && codes.includes(String(error.code));
}
