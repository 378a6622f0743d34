import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Texts } from './slip.ts';

/** The profiles and sheets below a folder, by their paths from there. */
export function readTexts(folder: string): Texts {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => /\.(?:ya?ml|csv)$/.test(file))
    .sort();
  return new Map(files.map((file) => [file, readFileSync(join(folder, file), 'utf8')]));
}
