import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { type FileUse, readBytes } from './read-bytes.ts';

/** Why the text of a file cannot be had. */
export type ReadProblem = Problem<'tooLarge' | 'notUtf8' | 'unreadable'>;

/** Text of a file that the user has named, without a byte-order mark. */
export function readText(path: string, cwd: string, use: FileUse): Result<string, ReadProblem> {
  const bytes = readBytes(path, cwd, use);
  if (!bytes.ok) return bytes;
  try {
    return success(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value));
  } catch {
    return refusal('notUtf8', `${printable(path)} is not UTF-8 text`, 'Save it as UTF-8.');
  }
}
