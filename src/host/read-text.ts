import { readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { fileErrorCode } from './file-error.ts';

/** What a file is read as. */
interface TextKind {
  /** `bench sheet`, for a message. */
  readonly name: string;
  readonly mostBytes: number;
}

/** Why the text of a file cannot be had. */
export type ReadProblem = Problem<'tooLarge' | 'notUtf8' | 'unreadable'>;

/** Text of a file that the user has named, without a byte-order mark. */
export function readText(
  path: string,
  cwd: string,
  { name, mostBytes }: TextKind,
): Result<string, ReadProblem> {
  const absolute = resolve(cwd, path);
  const shown = printable(path);
  try {
    if (statSync(absolute).size > mostBytes) {
      return refusal('tooLarge', `${shown} is too large for a ${name}`, 'Check that it is the right file.');
    }
    return success(new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(absolute)));
  } catch (error) {
    if (error instanceof TypeError)
      return refusal('notUtf8', `${shown} is not UTF-8 text`, 'Save it as UTF-8.');
    const code = fileErrorCode(error);
    return refusal('unreadable', `${shown} cannot be read (${code})`, 'Check the spelling of the path.');
  }
}
