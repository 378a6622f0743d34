import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { failure, type Result, success } from '../result.ts';

/** Why a file that can be opened is not read. */
export type PlainFileProblem = 'folder' | 'notPlain' | 'tooLarge';

// A pipe is not waited for. Systems without these flags have no such files either.
const reading = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** Flag for `readPlainFile` with which a link is an error, ELOOP, and not followed. */
export const noLink = constants.O_NOFOLLOW ?? 0;

/**
 * Bytes of a plain file, up to the most that it may have, whatever the system says of its size: some files of a system
 * have none and never end. It throws what the system says where it cannot be opened or read.
 */
export function readPlainFile(path: string, mostBytes: number, flags = 0): Result<Buffer, PlainFileProblem> {
  const file = openSync(path, reading | flags);
  try {
    const stat = fstatSync(file);
    if (stat.isDirectory()) return failure('folder');
    if (!stat.isFile()) return failure('notPlain');
    if (stat.size > mostBytes) return failure('tooLarge');
    return readUpTo(file, stat.size, mostBytes);
  } finally {
    closeSync(file);
  }
}

/** Reads to the end, with room for one byte more than is expected, so that the end shows. */
function readUpTo(file: number, expected: number, mostBytes: number): Result<Buffer, 'tooLarge'> {
  let bytes = Buffer.allocUnsafe(expected + 1);
  let length = 0;
  for (;;) {
    const read = readSync(file, bytes, length, bytes.length - length, null);
    length += read;
    if (read === 0) return success(bytes.subarray(0, length));
    if (length > mostBytes) return failure('tooLarge');
    if (length === bytes.length) bytes = Buffer.concat([bytes], Math.min(2 * length + 4096, mostBytes + 1));
  }
}
