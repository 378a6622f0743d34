import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const projectFolder = fileURLToPath(new URL('../../', import.meta.url));

/** Written by `npm run generate`. */
const generated = /^docs\/(?:rules|kinds)\//;

/** Paths of the documents that people have written, from the folder of the project: the README and the pages of docs/. */
export function documentPaths(): string[] {
  const pages = readdirSync(`${projectFolder}docs`, { recursive: true, encoding: 'utf8' })
    .map((path) => `docs/${path.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith('.md') && !generated.test(path));
  return ['README.md', ...pages.sort((a, b) => (a < b ? -1 : 1))];
}

export function readDocument(path: string): string {
  return readFileSync(`${projectFolder}${path}`, 'utf8');
}
