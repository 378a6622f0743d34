import { existsSync, lstatSync, mkdirSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { printable } from '../../text/printable.ts';
import { fileErrorCode, unwritable } from '../file-error.ts';
import { isInside, nearestReal } from '../inside.ts';
import { underLock } from './folder-lock.ts';
import { removeQuietly, tidyFolders } from './leftovers.ts';
import { createFile } from './put-file.ts';

/** Why a new file was not written. */
export type NewFileProblem = Problem<'unwritable' | 'linkElsewhere' | 'fileExists' | 'busy'>;

/** A file that is not there yet, by its path from the folder that it goes into. */
interface NewFile {
  readonly path: string;
  readonly text: string;
}

/** What a new file must be in keeping with. */
interface NewFileCompany {
  /** What must stand beside it. */
  readonly beside?: NewFile | null;
  /** A folder, by its path from the same one, in whose folders no other file may have the name. */
  readonly onlyOneIn?: string;
}

/**
 * Writes a file that is not there yet, inside of a folder, which is made where it is missing: never over another file,
 * nor through a link that leads out of the folder. What must stand beside it comes first, and is taken as it is if it
 * is there already with the same text, as a run leaves it that was ended between the two; otherwise it is all or nothing.
 */
export async function writeNewFile(
  folder: string,
  file: NewFile,
  { beside = null, onlyOneIn = dirname(file.path) }: NewFileCompany = {},
): Promise<Result<true, NewFileProblem>> {
  const absolute = join(folder, file.path);
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    return refusal(
      'unwritable',
      `The folder ${printable(folder)} cannot be made (${fileErrorCode(error)})`,
      'Name one that you may make.',
    );
  }
  try {
    if (!isInside(nearestReal(dirname(absolute)), realpathSync(folder))) return behindLink(file.path);
    mkdirSync(dirname(absolute), { recursive: true });
    tidyFolders([dirname(absolute)]);
    const locked = join(folder, onlyOneIn);
    return await underLock(locked, file.path, (mark) => {
      const there = standingInstead(folder, file.path, onlyOneIn);
      if (there !== null) return fileExists(there);
      const first =
        beside === null ? success(false) : create(folder, beside, { mark, locked, allowed: 'sameText' });
      if (!first.ok) return first;
      const second = create(folder, file, { mark, locked, allowed: 'nothing' });
      if (!second.ok && first.value && beside !== null) removeQuietly(join(folder, beside.path));
      return second.ok ? success(true) : second;
    });
  } catch (error) {
    return unwritable(file.path, error);
  }
}

/** The lock that a file is written under, and what may stand in its place already. */
interface Creation {
  readonly mark: string;
  readonly locked: string;
  readonly allowed: 'sameText' | 'nothing';
}

/** Writes one file; whether it was not there before. */
function create(
  folder: string,
  { path, text }: NewFile,
  { mark, locked, allowed }: Creation,
): Result<boolean, NewFileProblem> {
  const absolute = join(folder, path);
  try {
    createFile(absolute, text, mark, locked);
    return success(true);
  } catch (error) {
    if (fileErrorCode(error) !== 'EEXIST') return unwritable(path, error);
    if (allowed === 'sameText' && holds(absolute, text)) return success(false);
    return fileExists(path);
  }
}

/** The file at a path, or one of its name in another of the folders that may hold it once; by its path. */
function standingInstead(folder: string, path: string, onlyOneIn: string): string | null {
  const besides = dirname(path) === onlyOneIn ? [] : foldersIn(join(folder, onlyOneIn));
  const places = [path, ...besides.map((name) => `${onlyOneIn}/${name}/${basename(path)}`)];
  return places.find((place) => isThere(join(folder, place))) ?? null;
}

function foldersIn(folder: string): string[] {
  const entries = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return entries.map(({ name }) => name).sort();
}

function isThere(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}

function holds(path: string, text: string): boolean {
  return existsSync(path) && lstatSync(path).isFile() && readFileSync(path, 'utf8') === text;
}

function behindLink(path: string) {
  return refusal(
    'linkElsewhere',
    `${printable(path)} lies behind a link that leads elsewhere; nothing was written`,
    'Take the link away, or write where it leads.',
  );
}

function fileExists(path: string) {
  return refusal(
    'fileExists',
    `${printable(path)} is there already, and nothing is ever written over`,
    'Move it away, or choose another name.',
  );
}
