import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contentFaults, packedFiles } from './release/package-contents.ts';

// `npm run package-check`, after `npm run build`: what is in the package, and whether its types and entrances resolve.
const root = fileURLToPath(new URL('..', import.meta.url));

const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' });
const files = packedFiles(root);
const faults = contentFaults(files, new Set(sources.map((path) => path.replaceAll('\\', '/'))));
for (const fault of faults) process.stderr.write(`${fault}\n`);
process.stdout.write(`${files.length} files in the package.\n`);

const folder = mkdtempSync(join(tmpdir(), 'meltbounds-package-'));
try {
  const packed = runs('npm', 'pack', '--ignore-scripts', '--silent', '--pack-destination', folder);
  const tarball = join(folder, readdirSync(folder)[0] ?? '');
  const linted = packed && runs('npx', '--no-install', 'publint', tarball, '--strict');
  // The package is ESM only: Node's and bundlers' resolutions count, those of CommonJS cannot hold.
  const resolved = packed && runs('npx', '--no-install', 'attw', tarball, '--profile', 'esm-only');
  if (faults.length > 0 || !linted || !resolved) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}

function runs(program: string, ...args: string[]): boolean {
  return spawnSync(program, args, { cwd: root, stdio: 'inherit' }).status === 0;
}
