import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { commonJsFaults } from './release/commonjs-project.ts';
import { contentFaults, linkFaults, packedFiles } from './release/package-contents.ts';

// `npm run package-check`, after `npm run build`: what is in the package, and whether its types and entrances resolve, also from CommonJS.
const root = fileURLToPath(new URL('..', import.meta.url));

const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' });
const files = packedFiles(root);
const faults = [
  ...contentFaults(files, new Set(sources.map((path) => path.replaceAll('\\', '/')))),
  ...linkFaults(files, (file) => readFileSync(join(root, file), 'utf8')),
];
for (const fault of faults) process.stderr.write(`${fault}\n`);
process.stdout.write(`${files.length} files in the package.\n`);

const folder = mkdtempSync(join(tmpdir(), 'meltbounds-package-'));
try {
  const packed = runs('npm', 'pack', '--ignore-scripts', '--silent', '--pack-destination', folder);
  const tarball = join(folder, readdirSync(folder)[0] ?? '');
  const linted = packed && runs('npx', '--no-install', 'publint', tarball, '--strict');
  // To this linter types for `require` ask for a second build. Node requires ES modules in every version that we run on, which the next step tries.
  const resolved =
    packed &&
    runs('npx', '--no-install', 'attw', tarball, '--profile', 'esm-only', '--ignore-rules', 'false-cjs');
  const project = join(folder, 'project');
  mkdirSync(project);
  const required = packed ? commonJsFaults(root, tarball, project) : [];
  for (const fault of required) process.stderr.write(`${fault}\n`);
  if (faults.length > 0 || !linted || !resolved || required.length > 0) process.exitCode = 1;
  else process.stdout.write('CommonJS projects compile against it and run.\n');
} finally {
  rmSync(folder, { recursive: true });
}

function runs(program: string, ...args: string[]): boolean {
  return spawnSync(program, args, { cwd: root, stdio: 'inherit' }).status === 0;
}
