/** @module-tag long */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readRegistryFiles } from '../../src/host/registry-files.ts';
import { runCommand } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

// Root may do anything, so that the program must run as somebody else.

const isRoot = process.getuid?.() === 0;
const nobody = 65_534;
const canDrop = !isRoot || spawnSync('setpriv', ['--version']).status === 0;
const drop = isRoot ? ['setpriv', `--reuid=${nobody}`, `--regid=${nobody}`, '--clear-groups'] : ['env'];

/** The sample registry and a copy of the program, where anybody may look. */
function openToAll() {
  const folder = temporaryFolder();
  chmodSync(folder, 0o755);
  const { cwd, path } = sampleRegistry(join(folder, 'work'));
  const program = join(folder, 'program');
  const root = fileURLToPath(new URL('../..', import.meta.url));
  mkdirSync(program);
  cpSync(join(root, 'out'), join(program, 'dist'), {
    recursive: true,
    filter: (file) => !file.endsWith('kept'),
  });
  for (const name of ['package.json', 'schema', 'templates'])
    cpSync(join(root, name), join(program, name), { recursive: true });
  if (isRoot) execFileSync('chown', ['-R', `${nobody}:${nobody}`, folder]);
  const run = (...args: string[]) => {
    const command = [...drop, process.execPath, join(program, 'dist/cli.cjs'), ...args];
    const { status, stdout, stderr } = spawnSync(command[0] ?? '', command.slice(1), {
      cwd,
      encoding: 'utf8',
      env: { PATH: process.env.PATH, HOME: folder, NODE_DISABLE_COMPILE_CACHE: '1' },
    });
    return { status, out: stdout, err: stderr };
  };
  return { cwd, path, run };
}

describe.skipIf(!canDrop)('as a user who may not do everything (needs setpriv when run by root)', () => {
  it.each([
    ['entered', 0o400],
    ['listed', 0o100],
    ['listed nor entered', 0],
  ])('a folder that cannot be %s is one finding at that folder', (_, mode) => {
    const { path, run } = openToAll();
    chmodSync(path('filaments/oakhollow'), mode);
    const { status, out, err } = run('check', '--format', 'json');
    chmodSync(path('filaments/oakhollow'), 0o755);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    const { findings } = JSON.parse(out) as { findings: { rule: string; file: string; message: string }[] };
    expect(findings.filter(({ rule }) => rule.startsWith('file/'))).toMatchObject([
      {
        file: 'profiles/filaments/oakhollow',
        rule: 'file/unreadable',
        message: 'The folder cannot be read, so nothing in it was looked at',
      },
    ]);
  });

  it.each([0o400, 0o100, 0])('a registry in a folder of mode %o is no empty one', (mode) => {
    const { cwd, run } = openToAll();
    chmodSync(join(cwd, 'profiles'), mode);
    const ends = [run('check'), run('index', 'profiles'), run('reduce', 'wren-daisy-pla-230')];
    chmodSync(join(cwd, 'profiles'), 0o755);
    for (const { status, err } of ends) {
      expect(status).toBe(2);
      expect(err).toMatch(/^The folder profiles cannot be read: you may not list it, or not enter it\.\n/);
    }
  });

  it('what may not be written is told, and nothing is left', () => {
    const { path, run } = openToAll();
    const filaments = path('filaments/oakhollow');
    chmodSync(filaments, 0o555);
    const before = readdirSync(filaments);
    const { status, err } = run('reduce', 'wren-clover-petg-245', '--adopt', '--no-plot');
    const after = readdirSync(filaments);
    chmodSync(filaments, 0o755);
    expect(status).toBe(2);
    expect(err).toMatch(
      /^profiles\/filaments\/oakhollow\/clover-petg\.yaml cannot be written \(EACCES\)\.\n/,
    );
    expect(after).toEqual(before);
    expect(run('index', 'profiles', '--out', '/index.json').err).toMatch(
      /^\/index\.json cannot be written \(E[A-Z]+\)\.\n/,
    );
  });
});

describe('what is no plain file', () => {
  it('is one finding, and is not opened', async () => {
    const registry = sampleRegistry();
    execFileSync('mkfifo', [registry.path('sources/pipe.yaml')]);
    const { status, out } = await runCommand(registry.cwd, ['check', '--fail-on', 'error']);
    expect(status).toBe(1);
    expect(out).toContain('profiles/sources/pipe.yaml:1:1 error file/unreadable');
    expect(out.match(/ error /g)).toHaveLength(1);
  });

  it('is one finding, a device too', async (context) => {
    const registry = sampleRegistry();
    const made = spawnSync('mknod', [registry.path('sources/device.yaml'), 'c', '1', '5']);
    context.skip(made.status !== 0, 'only root may make devices');
    expect((await runCommand(registry.cwd, ['check'])).out).toContain(
      'profiles/sources/device.yaml:1:1 error file/unreadable',
    );
    expect((await runCommand(registry.cwd, ['migrate'])).status).toBe(2);
  });
});

describe('what vanishes while it is read', () => {
  it('is a finding, whether a file or a folder', () => {
    const registry = sampleRegistry();
    const root = { folder: join(registry.cwd, 'profiles'), shown: '' };
    // Everything goes as soon as the first name is asked for.
    const files = readRegistryFiles(root, (name) => {
      rmSync(registry.path('trials'), { recursive: true, force: true });
      rmSync(registry.path('sources'), { recursive: true, force: true });
      return name.endsWith('.yaml');
    });
    const refused = files.filter((file) => !file.ok);
    expect(refused.map((file) => [file.path, file.problem])).toEqual([
      ['sources', 'missing'],
      ['trials', 'missing'],
    ]);
    expect(files.length).toBeGreaterThan(refused.length);
    expect(readFileSync(registry.path('jobs/hook.yaml'), 'utf8')).not.toBe('');
  });

  it('is a finding of a check, and no fault', async () => {
    const registry = sampleRegistry();
    const names: string[] = [];
    const files = readRegistryFiles({ folder: join(registry.cwd, 'profiles'), shown: '' }, (name) => {
      names.push(name);
      if (name === 'house.yaml') rmSync(registry.path('policies/house.yaml'));
      return name.endsWith('.yaml');
    });
    expect(files.filter((file) => !file.ok)).toEqual([
      { ok: false, path: 'policies/house.yaml', relativePath: 'policies/house.yaml', problem: 'missing' },
    ]);
  });
});
