import { existsSync, lstatSync, mkdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { printable } from '../../text/printable.ts';
import { fileErrorCode, linkElsewhere, unwritable } from '../file-error.ts';
import { isLink, leadsOut } from '../inside.ts';
import { underLock } from './folder-lock.ts';
import { tidyFolders } from './leftovers.ts';
import { createFolder, replaceFile } from './put-file.ts';

/** Why a file was not written. */
export type WriteProblem = Problem<'unwritable' | 'linkElsewhere' | 'busy'>;

type NamedFile = readonly [name: string, content: string | Uint8Array];

/** Writes a file, whole or not at all, over one that is there already. `path` is what the user calls it. */
export async function writeFile(
  path: string,
  text: string,
  cwd: string,
): Promise<Result<null, WriteProblem>> {
  const absolute = resolve(cwd, path);
  try {
    if (isLink(absolute) || leadsOut(dirname(absolute), cwd)) return linkElsewhere(path);
    if (isOther(absolute)) return noPlainFile(path);
    return await underLock(dirname(absolute), path, (mark) => {
      replaceFile(absolute, text, mark);
      return success(null);
    });
  } catch (error) {
    return unwritable(path, error);
  }
}

/**
 * Writes files, each a name and its content, into a folder, and returns the names. A folder that is not there yet comes with
 * all of them or not at all; in one that is there each file is the old or the new one, in the order in which they are
 * given. `named` is what the user calls the folder.
 */
export async function writeFiles(
  files: readonly NamedFile[],
  folder: string,
  named: string,
  cwd: string,
): Promise<Result<string[], WriteProblem>> {
  try {
    if (leadsOut(folder, cwd)) return linkElsewhere(named);
    const made = await makeFolder(folder, files, named);
    if (!made.ok) return made;
    if (!made.value) {
      tidyFolders([dirname(folder)]);
      const link = files.find(([file]) => isLink(join(folder, file)));
      if (link !== undefined) return linkElsewhere(join(named, link[0]));
      const other = files.find(([file]) => isOther(join(folder, file)));
      if (other !== undefined) return noPlainFile(join(named, other[0]));
      const written = await underLock<null, never>(folder, named, (mark) => {
        for (const [file, content] of files) replaceFile(join(folder, file), content, mark);
        return success(null);
      });
      if (!written.ok) return written;
    }
    return success(files.map(([file]) => file));
  } catch (error) {
    return unwritableFolder(named, error);
  }
}

/** A folder that the system would not write into, by the name that the user gave it. */
export function unwritableFolder(named: string, error: unknown) {
  return refusal(
    'unwritable',
    `--out ${printable(named)}: the files cannot be written (${fileErrorCode(error)})`,
    'Name a folder that you may write to, on a disk with space.',
  );
}

/** Whether a folder, a device or a pipe stands at a path: a file must not take its place. */
export function isOther(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isFile() === false;
}

export function noPlainFile(path: string) {
  return refusal(
    'unwritable',
    `${printable(path)} is no plain file; nothing was written`,
    'Name a file, or a place where none is yet.',
  );
}

/** Makes a folder with its files, by absolute path, unless there is one; whether it has. It throws what the system says. */
export async function makeFolder(
  folder: string,
  files: readonly NamedFile[],
  named: string,
): Promise<Result<boolean, Problem<'busy'>>> {
  if (existsSync(folder)) return success(false);
  mkdirSync(dirname(folder), { recursive: true });
  return underLock<boolean, never>(dirname(folder), named, (mark) => {
    if (existsSync(folder)) return success(false);
    createFolder(folder, files, mark);
    return success(true);
  });
}
