import { readFileSync } from 'node:fs';
import writeFileAtomic from 'write-file-atomic';

/** Replaces the text of a file as a whole or not at all. A byte-order mark is no part of the text, and stays. */
export async function replaceText(path: string, text: string): Promise<void> {
  const mark = readFileSync(path, 'utf8').startsWith('\uFEFF') ? '\uFEFF' : '';
  await writeFileAtomic(path, mark + text);
}
