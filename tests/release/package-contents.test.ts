import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { contentFaults, linkFaults, packedFiles } from '../../scripts/release/package-contents.ts';

const whole = [
  ...[
    'package.json',
    'README.md',
    'docs/README.md',
    'LICENSES/MIT.txt',
    'LICENSES/CC0-1.0.txt',
    'schema/filament.schema.json',
  ],
  'schema/bundle/filament.schema.json',
  ...[
    'dist/cli.cjs',
    'dist/main.cjs',
    'dist/cli/LICENSES.txt',
    'dist/index.js',
    'dist/index.d.ts',
    'dist/index.d.cts',
    'dist/program-digest.txt',
    'dist/registry/generated/validators.js',
  ],
];
const sources = new Set(['cli.ts', 'index.ts', 'registry/generated/validators.js']);

describe('the contents of a package', () => {
  it('are right where it holds what it needs and nothing else', () => {
    expect(contentFaults(whole, sources)).toEqual([]);
  });

  it('may hold the parts of the bundled command line, which have no source of their own', () => {
    expect(contentFaults([...whole, 'dist/cli/check-N63JZR5F.cjs'], sources)).toEqual([]);
  });

  it.each([
    'tests/cli.test.ts',
    '.env',
    'dist/cli.js.map',
    'dist/cli/kept/0a1b2c-v20.19.0-x64/main.bin',
    'profiles/notes.txt',
    'src/cli.ts',
    'scripts/demo.ts',
  ])('may not hold %s', (file) => {
    expect(contentFaults([...whole, file], sources)).toContain(`${file} does not belong into the package.`);
  });

  it('may not hold what an earlier build has left behind', () => {
    expect(contentFaults([...whole, 'dist/commands/gone.js'], sources)).toEqual([
      'dist/commands/gone.js has no source any more: delete dist/ and build again.',
    ]);
  });

  it.each(whole)('must hold %s', (file) => {
    const rest = whole.filter((other) => other !== file);
    expect(contentFaults(rest, sources)).toEqual([
      `${file} is missing from the package: run \`npm run build\`.`,
    ]);
  });
});

it('a link of a packed document that leads out of the package is told', () => {
  const files = ['README.md', 'docs/README.md', 'docs/rules.md'];
  const texts: Readonly<Record<string, string>> = {
    'README.md': '[Rules](docs/rules.md#severity) [Code](src/core.ts) [elsewhere](https://example.org/)',
    'docs/README.md': '[up](../README.md) `[no](link.md)` [gone](gone.md)',
    'docs/rules.md': '[here](#severity)',
  };
  expect(linkFaults(files, (file) => texts[file] ?? '')).toEqual([
    'README.md links to src/core.ts, which is not in the package.',
    'docs/README.md links to gone.md, which is not in the package.',
  ]);
});

it('what npm packs from this project is allowed, a build aside', { tags: 'long' }, () => {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const files = packedFiles(root);
  const others = files.filter((file) => !file.startsWith('dist/'));
  expect(others).toContain('schema/output/index.schema.json');
  expect(contentFaults(others, sources).filter((fault) => fault.includes('does not belong'))).toEqual([]);
  expect(linkFaults(files, (file) => readFileSync(`${root}${file}`, 'utf8'))).toEqual([]);
});
