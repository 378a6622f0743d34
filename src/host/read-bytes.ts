import { readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode } from './file-error.ts';

/** What a file is read as. */
export interface FileUse {
  /** `bench sheet`, for a message. */
  readonly name: string;
  readonly mostBytes: number;
}

/** Bytes of a file that the user has named. */
export function readBytes(
  path: string,
  cwd: string,
  { name, mostBytes }: FileUse,
): Result<Uint8Array, Problem<'tooLarge' | 'unreadable'>> {
  const absolute = resolve(cwd, path);
  const shown = printable(path);
  try {
    const stat = statSync(absolute);
    if (stat.isDirectory())
      return refusal('unreadable', `${shown} is a folder, not a ${name}`, 'Name a file.');
    if (!stat.isFile()) return refusal('unreadable', `${shown} is no plain file`, 'Name a file.');
    if (stat.size > mostBytes) {
      return refusal('tooLarge', `${shown} is too large for a ${name}`, 'Check that it is the right file.');
    }
    return success(readFileSync(absolute));
  } catch (error) {
    const code = fileErrorCode(error);
    return refusal('unreadable', `${shown} cannot be read (${code})`, 'Check the spelling of the path.');
  }
}
