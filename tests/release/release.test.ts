import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { commitAll } from '../git-repository.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

it('`npm run propose-changeset` writes what has changed in profiles, schemas and rules', {
  tags: 'long',
}, () => {
  const registry = sampleRegistry();
  const at = (path: string) => join(registry.cwd, path);
  for (const part of ['schema', 'docs/rules', 'package.json'])
    cpSync(join(root, part), at(part), { recursive: true });
  mkdirSync(at('.changeset'));
  commitAll(registry.cwd, 'Start');
  registry.edit('jobs/hook.yaml', 'version: 1.0.0', 'version: 1.0.1');
  registry.edit('jobs/hook.yaml', 'Coat hook', 'Hat hook');
  writeFileSync(at('docs/rules/units-slip.md'), '# units/slip\n');
  const script = join(root, 'scripts/propose-changeset.ts');
  const tsx = import.meta.resolve('tsx');
  const run = (base: string) =>
    spawnSync(process.execPath, ['--import', tsx, script, base], { cwd: registry.cwd, encoding: 'utf8' });
  const { status, stderr } = run('main');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(readFileSync(at('.changeset/proposed.md'), 'utf8')).toBe(
    '---\n"meltbounds": minor\n---\n\nCorrected values: job hook 1.0.1.\n\nRules: new `units/slip`.\n',
  );
  expect(run('nowhere')).toMatchObject({ status: 2, stderr: expect.stringContaining('git knows no commit') });
});

/** What a release needs of the project, in a repository of its own, with these changesets. */
function projectCopy(
  changesets: Readonly<Record<string, readonly [bump: string, text: string]>>,
  version = '0.0.0',
): string {
  const folder = temporaryFolder();
  cpSync(join(root, 'scripts'), join(folder, 'scripts'), { recursive: true });
  for (const name of ['package.json', 'package-lock.json']) {
    // The first version in either file is that of the package itself, in the lock file the second too.
    const text = readFileSync(join(root, name), 'utf8');
    const { version: now } = JSON.parse(text) as { version: string };
    const own = `"name": "meltbounds",\n`;
    const parts = text.split(new RegExp(`(?<=${own} *)"version": "${now}"`));
    writeFileSync(join(folder, name), parts.join(`"version": "${version}"`));
  }
  writeFileSync(join(folder, 'CHANGELOG.md'), '# Changelog\n');
  mkdirSync(join(folder, '.changeset'));
  for (const name of ['config.json', 'changelog.cjs']) {
    cpSync(join(root, '.changeset', name), join(folder, '.changeset', name));
  }
  const changeset = (name: string, bump: string, text: string) =>
    writeFileSync(join(folder, '.changeset', name), `---\n"meltbounds": ${bump}\n---\n\n${text}\n`);
  for (const [name, [bump, text]] of Object.entries(changesets)) changeset(`${name}.md`, bump, text);
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'dir');
  writeFileSync(join(folder, '.gitignore'), 'node_modules\n');
  commitAll(folder, 'Start');
  return folder;
}

/** Cuts a version in a copy: what it is, what the lock file says, and what the changelog says of it. */
function cutVersion(folder: string, ...args: string[]) {
  const { status, stderr } = spawnSync('npm', ['run', '--silent', 'version', '--', ...args], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(status, stderr).toBe(0);
  const read = (name: string) => readFileSync(join(folder, name), 'utf8');
  const { version } = JSON.parse(read('package.json')) as { version: string };
  const lock = JSON.parse(read('package-lock.json')) as {
    version: string;
    packages: Record<string, { version: string }>;
  };
  const [release = ''] = read('CHANGELOG.md')
    .split(/^(?=## )/m)
    .slice(1);
  return { version, locked: [lock.version, lock.packages['']?.version], release };
}

describe('`npm run version`', { tags: 'long' }, () => {
  it('moves the version, that of the lock file too, and writes the changelog by group', () => {
    const folder = projectCopy({
      one: ['minor', 'Rules: new `units/slip`. Tool: `diff` says what a change means.'],
      two: ['patch', 'Corrected values: filament a/b 1.0.1.'],
    });
    const lockBefore = readFileSync(join(folder, 'package-lock.json'), 'utf8');
    expect(cutVersion(folder)).toEqual({
      version: '0.1.0',
      locked: ['0.1.0', '0.1.0'],
      release: `## 0.1.0

### Corrected values

- Filament a/b 1.0.1.

### Rules

- New \`units/slip\`.

### Tool

- \`diff\` says what a change means.
`,
    });
    // Nothing else of the lock file moves.
    expect(readFileSync(join(folder, 'package-lock.json'), 'utf8').replaceAll('"0.1.0"', '"0.0.0"')).toBe(
      lockBefore.replaceAll('"0.1.0"', '"0.0.0"'),
    );
  });

  it('cuts 0.1.0 as the first version, whatever changed on the way to it', () => {
    const folder = projectCopy({ one: ['major', 'Tool: all methods are reached by one entrance.'] });
    expect(cutVersion(folder)).toMatchObject({
      version: '0.1.0',
      release: '## 0.1.0\n\n### Tool\n\n- All methods are reached by one entrance.\n',
    });
  });

  it('stays below 1.0.0 for a breaking change, and names it before all others', () => {
    const folder = projectCopy(
      {
        one: ['minor', 'Rules: new `units/slip`.'],
        two: [
          'major',
          'Added: job peg 1.0.0.\n\nCorrected values: Major: filament a/b 2.0.0. Tables made by the old version are too fast, or gone.',
        ],
        three: ['major', 'Schema: `filament/tint` is gone.'],
      },
      '0.3.2',
    );
    expect(cutVersion(folder)).toMatchObject({
      version: '0.4.0',
      release: expect.stringMatching(
        /^## 0\.4\.0\n\n### Major changes\n\n- \*\*Corrected values:\*\* Filament a\/b 2\.0\.0\. Tables made by the old version are too fast, or gone\.\n- \*\*Schema:\*\* `filament\/tint` is gone\.\n\n### Added\n\n- Job peg 1\.0\.0\.\n\n### Rules\n/,
      ),
    });
  });

  it('cuts 1.0.0 when it is told to', () => {
    const folder = projectCopy({ one: ['major', 'Tool: what it promises, it keeps from now on.'] }, '0.9.0');
    expect(cutVersion(folder, '--first-stable')).toMatchObject({
      version: '1.0.0',
      locked: ['1.0.0', '1.0.0'],
    });
  });
});
