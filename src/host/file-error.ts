import { refusal } from '../result.ts';
import { printable } from '../text/printable.ts';

/** Why the system would not read or write a file, for a message: its code, such as EACCES. Other errors are bugs. */
export function fileErrorCode(error: unknown): string {
  if (error instanceof Error && 'code' in error) return String(error.code);
  throw error;
}

/** A file that the system would not write, by the name that the user gave it. */
export function unwritable(path: string, error: unknown) {
  return refusal(
    'unwritable',
    `${printable(path)} cannot be written (${fileErrorCode(error)})`,
    'Check the folder, its permissions and the space on the disk.',
  );
}

/** A path that the user named and that is not there. */
export function noSuchPath(path: string) {
  return refusal(
    'noSuchPath',
    `There is no file or folder ${printable(path)}`,
    'Check the spelling of the path.',
  );
}

/** A path that is a link, or lies behind one: writing there would change a file that nobody has named. */
export function linkElsewhere(path: string) {
  return refusal(
    'linkElsewhere',
    `${printable(path)} is a link, or lies behind one that leads elsewhere; nothing was written`,
    'Take the link away, or name the place that it leads to.',
  );
}
