import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sha256Of } from '../text/sha256.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Written beside the built program, so that a run need not read all of it. */
export const digestFile = 'program-digest.txt';

/** Tells this program from every other one: as it was built, or by what its files hold. */
export function programDigest(): string {
  try {
    return readFileSync(join(root, digestFile), 'utf8').trim();
  } catch {
    return digestOfFiles(root);
  }
}

/** SHA-256 over the modules below a folder, with their paths. */
export function digestOfFiles(folder: string): string {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(?:c?js|ts)$/.test(path) && !path.endsWith('.d.ts'))
    .sort();
  return sha256Of(paths.map((path) => `${path}\n${readFileSync(join(folder, path), 'utf8')}`).join('\n'));
}
