import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadFolders } from '../../src/host/load-registry.ts';
import { copiedRegistry } from './copied-registry.ts';
import { withoutEvidence } from './without-evidence.ts';

const demo = fileURLToPath(new URL('../../profiles', import.meta.url));

/**
 * Writes a registry of about so many profiles, copies of the demo, into `profiles` in a folder; with its trials and what
 * rests on them, or without. Returns how many profiles there are.
 */
export function simulateScale(folder: string, count: number, hasEvidence: boolean): number {
  const { registry } = loadFolders([demo]);
  const texts = new Map(
    readdirSync(demo, { recursive: true, encoding: 'utf8' })
      .map((path) => path.replaceAll('\\', '/'))
      .filter((path) => /\.(?:yaml|csv)$/.test(path))
      .sort()
      .map((path) => [path, readFileSync(join(demo, path), 'utf8')] as const),
  );
  const given = hasEvidence ? texts : new Map(withoutEvidence(texts));
  let written = 0;
  for (const [path, text] of copiedRegistry(registry, given, count)) {
    const file = join(folder, 'profiles', path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
    if (path.endsWith('.yaml')) written += 1;
  }
  return written;
}
