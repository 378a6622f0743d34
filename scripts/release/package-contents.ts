import { spawnSync } from 'node:child_process';
import { posix } from 'node:path';
import { linksOf, pathOfLink } from '../docs/document-links.ts';

/** What a published package may hold, and nothing else. */
const allowed: readonly RegExp[] = [
  /^(?:package\.json|(?:README|CHANGELOG|CONTRIBUTING|DEVELOPERS|SECURITY)\.md)$/,
  /^docs\/(?:[a-z-]+\/)*[A-Za-z0-9-]+\.(?:md|svg|png)$/,
  /^LICENSES\/[^/]+\.txt$/,
  /^schema\/(?:bundle\/|output\/)?[a-z-]+\.schema\.json$/,
  /^schema\/bundle\/catalogue\.json$/,
  /^profiles\/README\.md$/,
  /^profiles\/[a-z]+\/(?:[^/]+\/)?[^/]+\.yaml$/,
  /^profiles\/trials\/[0-9]{4}\/[^/]+\.csv$/,
  /^templates\/registry\/(?:[a-zA-Z0-9_-]+\/)*[a-zA-Z0-9_-]+(?:\.(?:yaml|yml|json|md|sh|example))?$/,
  /^examples\/templates\/[a-z-]+\.(?:ini|txt|xml)$/,
  /^dist\/(?:[a-z0-9-]+\/)*[a-z0-9-]+\.(?:js|d\.c?ts)$/,
  /^dist\/program-digest\.txt$/,
  /^dist\/(?:cli|main|cli\/[a-zA-Z0-9_-]+)\.cjs$/,
  /^dist\/cli\/LICENSES\.txt$/,
];

/** What it must hold to work. */
const needed: readonly string[] = [
  'package.json',
  'README.md',
  'docs/README.md',
  'LICENSES/MIT.txt',
  'LICENSES/CC0-1.0.txt',
  'dist/cli.cjs',
  'dist/main.cjs',
  'dist/cli/LICENSES.txt',
  'dist/index.js',
  'dist/index.d.ts',
  'dist/index.d.cts',
  'dist/program-digest.txt',
  'dist/registry/generated/validators.js',
  'schema/filament.schema.json',
  'schema/bundle/filament.schema.json',
];

/** Sentences about files of a package that should not be there, or should; `sources` are paths below `src/`. */
export function contentFaults(files: readonly string[], sources: ReadonlySet<string>): string[] {
  const strange = files.filter((file) => !allowed.some((pattern) => pattern.test(file)));
  const stale = files.filter((file) => /\.(?:js|d\.c?ts)$/.test(file) && !hasSource(file, sources));
  const missing = needed.filter((file) => !files.includes(file));
  return [
    ...strange.map((file) => `${file} does not belong into the package.`),
    ...stale.map((file) => `${file} has no source any more: delete dist/ and build again.`),
    ...missing.map((file) => `${file} is missing from the package: run \`npm run build\`.`),
  ];
}

/**
 * Sentences about links of the documents of a package that lead to no file of it: whoever has installed it may have no
 * repository at hand. `textOf` reads a file.
 */
export function linkFaults(files: readonly string[], textOf: (file: string) => string): string[] {
  const known = new Set(files);
  return files
    .filter((file) => file.endsWith('.md'))
    .flatMap((file) => {
      const targets = linksOf(textOf(file))
        .map(pathOfLink)
        .filter((path) => path !== '');
      const gone = targets.filter((path) => !known.has(posix.join(posix.dirname(file), path)));
      return gone.map((path) => `${file} links to ${path}, which is not in the package.`);
    });
}

function hasSource(file: string, sources: ReadonlySet<string>): boolean {
  const name = file.slice('dist/'.length).replace(/\.(?:js|d\.c?ts)$/, '');
  return sources.has(`${name}.ts`) || sources.has(`${name}.js`);
}

/** Paths of the files that npm would pack from a folder, without running any script of the project. */
export function packedFiles(folder: string): string[] {
  const args = ['pack', '--dry-run', '--ignore-scripts', '--json'];
  const { stdout } = spawnSync('npm', args, { cwd: folder, encoding: 'utf8', maxBuffer: 1 << 26 });
  // One package a list item, or under its name in newer versions of npm.
  const [packed] = Object.values(JSON.parse(stdout) as Record<string, { files: { path: string }[] }>);
  return (packed?.files ?? []).map(({ path }) => path);
}
