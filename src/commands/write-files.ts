import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';

/** Writes files, each a name and its text, into a folder that is made if it is not there; returns the names. */
export async function writeFiles(
  files: readonly (readonly [string, string])[],
  folder: string,
): Promise<string[]> {
  mkdirSync(folder, { recursive: true });
  for (const [file, text] of files) await writeFileAtomic(join(folder, file), text);
  return files.map(([file]) => file);
}
