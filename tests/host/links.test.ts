import {
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

// A link that a pull request brings must not lead a command out of the folder that it works in.

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];

describe('a registry whose folder is a link out', () => {
  const linkedOut = () => {
    const registry = sampleRegistry();
    const elsewhere = join(temporaryFolder(), 'profiles');
    renameSync(join(registry.cwd, 'profiles'), elsewhere);
    symlinkSync(elsewhere, join(registry.cwd, 'profiles'));
    return registry;
  };

  it.each([
    [['check']],
    [['check', '--registry', 'profiles']],
    [['index']],
    [['check', '--fix']],
    [['migrate']],
  ])('is refused by %j', async (args) => {
    const { status, err } = await runCommand(linkedOut().cwd, args);
    expect(status).toBe(2);
    expect(err).toMatch(
      /^The folder profiles is a link that leads elsewhere, and a registry is read where it stands\.\n/,
    );
  });

  it('is refused where package.json names it', async () => {
    const { cwd } = linkedOut();
    symlinkSync(temporaryFolder(), join(cwd, 'shared'));
    mkdirSync(join(cwd, 'shared/machines'));
    writeFileSync(join(cwd, 'package.json'), '{"meltbounds": {"registries": ["shared"]}}');
    const { status, err } = await runCommand(cwd, ['check']);
    expect(status).toBe(2);
    expect(err).toMatch(/^The folder shared is a link that leads elsewhere/);
  });
});

test('a link to a registry beside it is followed', async () => {
  const registry = sampleRegistry();
  symlinkSync('profiles', join(registry.cwd, 'own'));
  const { status } = await runCommand(registry.cwd, ['check', '--registry', 'own']);
  expect(status).toBe(0);
});

describe('an output through a link', () => {
  it('is refused where the file is a link', async () => {
    const registry = sampleRegistry();
    const target = join(temporaryFolder(), 'precious.txt');
    writeFileSync(target, 'precious\n');
    symlinkSync(target, join(registry.cwd, 'index.json'));
    const { status, err } = await runCommand(registry.cwd, ['index', '--out', 'index.json']);
    expect(status).toBe(2);
    expect(err).toMatch(
      /^index\.json is a link, or lies behind one that leads elsewhere; nothing was written\.\n/,
    );
    expect(readFileSync(target, 'utf8')).toBe('precious\n');
  });

  it('is refused where a folder on the way is a link out', async () => {
    const registry = sampleRegistry();
    const elsewhere = temporaryFolder();
    symlinkSync(elsewhere, join(registry.cwd, 'out'));
    const tables = await runCommand(registry.cwd, ['tables', ...pairing, '--out', 'out']);
    expect({ status: tables.status, err: tables.err }).toEqual({
      status: 2,
      err: expect.stringMatching(/^out is a link, or lies behind one/),
    });
    const index = await runCommand(registry.cwd, ['index', '--out', 'out/index.json']);
    expect(index.status).toBe(2);
    expect(existsSync(join(elsewhere, 'index.json'))).toBe(false);
  });

  it('is followed where the user names a folder elsewhere', async () => {
    const registry = sampleRegistry();
    const elsewhere = temporaryFolder();
    const path = join(elsewhere, 'index.json');
    const { status } = await runCommand(registry.cwd, ['index', '--out', path]);
    expect(status).toBe(0);
    expect(existsSync(path)).toBe(true);
  });

  it('is refused in words where the system has no room for files', async () => {
    const registry = sampleRegistry();
    const { status, err } = await runCommand(registry.cwd, ['index', '--out', '/proc/self/index.json']);
    expect(status).toBe(2);
    expect(err).toMatch(/^\/proc\/self\/index\.json cannot be written \([A-Z]+\)\.\n/);
  });
});

describe('an output that is no plain file', () => {
  it('is refused, and what stands there stays', async () => {
    const registry = sampleRegistry();
    const { execFileSync } = await import('node:child_process');
    execFileSync('mkfifo', [join(registry.cwd, 'pipe')]);
    for (const [args, name] of [
      [['index', '--out', 'pipe'], 'pipe'],
      [['index', '--out', '/dev/null'], '/dev/null'],
      [['index', '--out', 'profiles'], 'profiles'],
    ] as const) {
      const { status, err } = await runCommand(registry.cwd, args);
      expect({ status, err }).toEqual({
        status: 2,
        err: `${name} is no plain file; nothing was written.\nName a file, or a place where none is yet.\n`,
      });
    }
    expect(lstatSync('/dev/null').isCharacterDevice()).toBe(true);
    expect(lstatSync(join(registry.cwd, 'pipe')).isFIFO()).toBe(true);
  });
});

describe('a file that never ends, or that nobody writes to', () => {
  it('is no package.json', async () => {
    const registry = sampleRegistry();
    const { execFileSync } = await import('node:child_process');
    execFileSync('mkfifo', [join(registry.cwd, 'package.json')]);
    const pipe = await runCommand(registry.cwd, ['check']);
    expect({ status: pipe.status, err: pipe.err }).toEqual({
      status: 2,
      err: 'package.json is no plain file of a usual size.\nFix it, or name registries with --registry.\n',
    });
    rmSync(join(registry.cwd, 'package.json'));
    symlinkSync('/dev/zero', join(registry.cwd, 'package.json'));
    expect((await runCommand(registry.cwd, ['check'])).err).toBe(pipe.err);
  });

  it('is no template', async () => {
    const registry = sampleRegistry();
    const asked = ['tables', ...pairing, '--template'];
    // The system gives them no size; the second has some megabytes.
    for (const [path, problem] of [
      ['/dev/zero', 'is no plain file'],
      ['/proc/kallsyms', 'is too large for a template'],
    ] as const) {
      const { status, err } = await runCommand(registry.cwd, [...asked, path]);
      expect(status).toBe(2);
      expect(err).toContain(problem);
    }
  });
});
