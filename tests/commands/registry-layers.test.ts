import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { checked, runCommand } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const base = 'node_modules/shared-limits';

/** A team's registry that rests on the sample registry, which stands where a package of that name would. */
function layered() {
  const sample = sampleRegistry();
  const cwd = temporaryFolder();
  cpSync(join(sample.cwd, 'profiles'), join(cwd, base, 'profiles'), { recursive: true });
  const write = (path: string, text: string) => {
    mkdirSync(dirname(join(cwd, path)), { recursive: true });
    writeFileSync(join(cwd, path), text);
  };
  const configure = (registries: unknown) =>
    write('package.json', JSON.stringify({ private: true, meltbounds: { registries } }));
  configure(['shared-limits', 'profiles']);
  const clover = readFileSync(sample.path('filaments/oakhollow/clover-petg.yaml'), 'utf8');
  const sage = clover
    .replace('id: oakhollow/clover-petg', 'id: ours/sage-petg')
    .replace('name: Clover', 'name: Sage');
  write('profiles/filaments/ours/sage-petg.yaml', sage.replace(/^meltFlow:.*?(?=^\w)/ms, ''));
  return { cwd, write, configure, clover };
}

describe('a registry that rests on another one', () => {
  it('may cite what the other one holds', async () => {
    const { cwd } = layered();
    expect((await checked(cwd)).findings).toEqual([]);
  });

  it('reports on its own profiles only, unless all are asked for', async () => {
    const { cwd, write } = layered();
    write(`${base}/profiles/jobs/odd.yaml`, 'kind: job\nid: odd\n');
    const own = await checked(cwd);
    expect(own).toMatchObject({ findings: [], summary: { profiles: 1 } });
    const all = await checked(cwd, '--all');
    expect(new Set(all.findings.map(({ file }) => file))).toEqual(
      new Set([`${base}/profiles/jobs/odd.yaml`]),
    );
    expect(all.summary.profiles).toBeGreaterThan(1);
  });

  it('is read with the other one when a single file is checked', async () => {
    const { cwd } = layered();
    expect((await checked(cwd, 'profiles/filaments/ours/sage-petg.yaml')).findings).toEqual([]);
  });

  it('may not take an id of the other one; the finding names both files', async () => {
    const { cwd, write, clover } = layered();
    write('profiles/filaments/oakhollow/clover-petg.yaml', clover);
    const { findings } = await checked(cwd);
    expect(findings).toMatchObject([
      {
        rule: 'identity/duplicate-id',
        severity: 'error',
        file: 'profiles/filaments/oakhollow/clover-petg.yaml',
        message: expect.stringContaining(`${base}/profiles/filaments/oakhollow/clover-petg.yaml`),
      },
    ]);
  });

  it('gives tables with the other one', async () => {
    const { cwd } = layered();
    const { status, out } = await runCommand(cwd, ['tables', 'plumstead/wren', 'oakhollow/daisy-pla']);
    expect(status).toBe(0);
    expect(out).toContain('oakhollow/daisy-pla');
  });

  it('reports what has changed where the other one is installed, git or no git', async () => {
    const { cwd, write } = layered();
    const git = (...args: string[]) =>
      execFileSync('git', ['-c', 'user.name=Bench', '-c', 'user.email=bench@example.org', ...args], { cwd });
    write('.gitignore', 'node_modules/\n');
    git('init', '--quiet');
    git('add', '.');
    git('commit', '--quiet', '--message', 'Begin');
    write('profiles/jobs/odd.yaml', 'kind: job\nid: odd\n');
    const { findings, summary } = await checked(cwd, '--changed', 'HEAD');
    expect(new Set(findings.map(({ file }) => file))).toEqual(new Set(['profiles/jobs/odd.yaml']));
    expect(summary.profiles).toBe(1);
  });

  it('takes new profiles', async () => {
    const { cwd } = layered();
    expect((await runCommand(cwd, ['new', 'job', 'ring'])).out).toBe('profiles/jobs/ring.yaml\n');
  });
});

describe('refused with status 2:', () => {
  const refusals: readonly (readonly [what: string, registries: unknown, message: string])[] = [
    ['a path out of the folder', ['../elsewhere'], 'lies outside of this folder'],
    ['an absolute path', ['/etc'], 'lies outside of this folder'],
    ['a package that is not installed', ['not-there', 'profiles'], 'There is no folder not-there.'],
    ['no list', 'profiles', 'Write it like this: "meltbounds": {"registries":'],
    ['an empty list', [], 'names no registries'],
  ];

  test.each(refusals)('%s', async (_, registries, message) => {
    const { cwd, configure } = layered();
    configure(registries);
    const { status, err } = await runCommand(cwd, ['check']);
    expect({ status, err }).toEqual({ status: 2, err: expect.stringContaining(message) });
  });

  it('a package.json that is no JSON', async () => {
    const { cwd, write } = layered();
    write('package.json', '{');
    expect((await runCommand(cwd, ['check'])).err).toContain('cannot be read as JSON');
  });
});

test('a link inside of either registry is not followed', async () => {
  const { cwd } = layered();
  symlinkSync('/etc/hostname', join(cwd, base, 'profiles/jobs/host.yaml'));
  symlinkSync('/etc/hostname', join(cwd, 'profiles/filaments/ours/host.yaml'));
  const { findings } = await checked(cwd, '--all');
  expect(findings.map(({ rule }) => rule)).toEqual(['file/link', 'file/link']);
});
