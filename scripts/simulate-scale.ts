import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadFolders } from '../src/host/load-registry.ts';
import { copiedRegistry } from './scale/copied-registry.ts';

// Usage: npm run simulate-scale -- FOLDER PROFILES
const [folder, wanted = '1000'] = process.argv.slice(2);
const count = Number(wanted);
if (folder === undefined || !Number.isInteger(count) || count < 1) {
  console.error('Usage: npm run simulate-scale -- FOLDER PROFILES, for instance: out/scale 10000');
  process.exit(2);
}

const demo = fileURLToPath(new URL('../profiles', import.meta.url));
const { registry } = loadFolders([demo]);
const texts = new Map(
  readdirSync(demo, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /\.(?:yaml|csv)$/.test(path))
    .sort()
    .map((path) => [path, readFileSync(join(demo, path), 'utf8')] as const),
);
let written = 0;
for (const [path, text] of copiedRegistry(registry, texts, count)) {
  const file = join(folder, 'profiles', path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  if (path.endsWith('.yaml')) written += 1;
}
console.log(`${written} profiles under ${join(folder, 'profiles')}`);
