import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { commitAll } from '../git-repository.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

it('`npm run propose-changeset` writes what has changed in profiles, schemas and rules', {
  tags: 'long',
}, () => {
  const registry = sampleRegistry();
  const at = (path: string) => join(registry.cwd, path);
  for (const folder of ['schema', 'docs/rules']) cpSync(join(root, folder), at(folder), { recursive: true });
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

/** What a release needs of the project, in a repository of its own, with two changesets. */
function projectCopy(): string {
  const folder = temporaryFolder();
  for (const name of ['package.json', 'CHANGELOG.md', 'scripts']) {
    cpSync(join(root, name), join(folder, name), { recursive: true });
  }
  mkdirSync(join(folder, '.changeset'));
  for (const name of ['config.json', 'changelog.cjs']) {
    cpSync(join(root, '.changeset', name), join(folder, '.changeset', name));
  }
  const changeset = (name: string, bump: string, text: string) =>
    writeFileSync(join(folder, '.changeset', name), `---\n"meltbounds": ${bump}\n---\n\n${text}\n`);
  changeset('one.md', 'minor', 'Rules: new `units/slip`. Tool: `diff` says what a change means.');
  changeset('two.md', 'patch', 'Corrected values: filament a/b 1.0.1.');
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'dir');
  writeFileSync(join(folder, '.gitignore'), 'node_modules\n');
  commitAll(folder, 'Start');
  return folder;
}

it('`npm run version` moves the version and writes the changelog by group', { tags: 'long' }, () => {
  const folder = projectCopy();
  const { status, stderr } = spawnSync('npm', ['run', '--silent', 'version'], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(status, stderr).toBe(0);
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
  expect(manifest.version).toBe('0.1.0');
  const changelog = readFileSync(join(folder, 'CHANGELOG.md'), 'utf8');
  expect(changelog).toContain(`## 0.1.0

### Corrected values

- Filament a/b 1.0.1.

### Rules

- New \`units/slip\`.

### Tool

- \`diff\` says what a change means.
`);
  expect(changelog).not.toMatch(/(?:Minor|Patch) Changes/);
});
