import { resolve } from 'node:path';
import { type Problem, type Result, refusal } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode } from './file-error.ts';
import { type PlainFileProblem, readPlainFile } from './read-plain-file.ts';

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
  const shown = printable(path);
  try {
    const read = readPlainFile(resolve(cwd, path), mostBytes);
    return read.ok ? read : refusedFile(shown, name, read.error);
  } catch (error) {
    const code = fileErrorCode(error);
    return refusal('unreadable', `${shown} cannot be read (${code})`, 'Check the spelling of the path.');
  }
}

function refusedFile(shown: string, name: string, problem: PlainFileProblem) {
  switch (problem) {
    case 'folder':
      return refusal('unreadable', `${shown} is a folder, not a ${name}`, 'Name a file.');
    case 'notPlain':
      return refusal('unreadable', `${shown} is no plain file`, 'Name a file.');
    case 'tooLarge':
      return refusal('tooLarge', `${shown} is too large for a ${name}`, 'Check that it is the right file.');
    default:
      return problem satisfies never;
  }
}
