/** @module-tag long */
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, inject, it } from 'vitest';
import { resultFolder } from '../../src/host/result-folder.ts';
import { sha256Of } from '../../src/text/sha256.ts';
import { runCommand, spawnCommand, testDay, unwrapped } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const demo = fileURLToPath(new URL('../../profiles', import.meta.url));

const checkArgs = ['check', '--today', testDay];

/** As a user has it: the folder is named in the environment. */
const spawnCheck = (cwd: string, cache: string, ...args: string[]) =>
  spawnCommand(cwd, [...checkArgs, ...args], { MELTBOUNDS_CACHE: cache });

/** A command of this process, where each trial is reduced once, that remembers in a folder of its own. */
const remembering = (cwd: string, cache: string, args: readonly string[]) =>
  runCommand(cwd, args, {
    results: async () => ({ folder: cache, store: resultFolder(cache), program: inject('program') }),
  });

const check = (cwd: string, cache: string, ...args: string[]) =>
  remembering(cwd, cache, [...checkArgs, ...args]);

function entriesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8', withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

/** Changes a number in an entry, and its digest so that it fits. */
function falsify(path: string): void {
  const [head = '', text = ''] = readFileSync(path, 'utf8').split('\n');
  const other = text.replace(/"value":\d+/, '"value":9');
  writeFileSync(path, `${head.replace(/(?<="digest":")[0-9a-f]+/, sha256Of(other))}\n${other}\n`);
}

it('remembers what it has reduced, in the folder that MELTBOUNDS_CACHE names', () => {
  const { cwd } = sampleRegistry();
  const cache = join(cwd, 'cache');
  const first = spawnCheck(cwd, cache);
  expect(first.status).toBe(0);
  expect(entriesIn(cache).length).toBeGreaterThan(0);
  expect(spawnCheck(cwd, cache)).toEqual(first);
});

it('says which remembered reduction is not what the readings give, and replaces it', () => {
  const { cwd } = sampleRegistry();
  const cache = join(cwd, 'cache');
  spawnCheck(cwd, cache);
  for (const path of entriesIn(cache)) falsify(path);
  const { status, out } = spawnCheck(cwd, cache);
  expect(status).toBe(1);
  expect(out).toContain('evidence/misremembered');
  expect(unwrapped(out)).toMatch(
    /The reduction of \S+ that an earlier run left behind is not what its readings give now/,
  );
  spawnCheck(cwd, cache);
  spawnCheck(cwd, cache, '--no-remember');
  expect(spawnCheck(cwd, cache, '--no-remember').status).toBe(0);
});

it('remembers a broken form with what follows from it', async () => {
  const { cwd, edit } = sampleRegistry();
  const cache = join(cwd, 'cache');
  edit('trials/2026/wren-clover-petg-245.yaml', '- [10, 400, 1.228]', '- [10, 400 mm, 1.228]');
  const first = await check(cwd, cache, 'profiles/trials/2026/wren-clover-petg-245.yaml');
  expect(unwrapped(first.out)).toMatch(/must be a number.* From this follows: /);
  expect(await check(cwd, cache, 'profiles/trials/2026/wren-clover-petg-245.yaml')).toEqual(first);
});

it('leaves nothing behind with --no-remember', () => {
  const { cwd } = sampleRegistry();
  const cache = join(cwd, 'cache');
  expect(spawnCheck(cwd, cache, '--no-remember').status).toBe(0);
  expect(() => entriesIn(cache)).toThrow(/ENOENT/);
});

it('does not read what a registry brings', () => {
  const { cwd } = sampleRegistry();
  const { status, err } = spawnCheck(cwd, join(cwd, 'profiles', 'cache'));
  expect(status).toBe(2);
  expect(err).toMatch(/lies inside of the registry .*profiles.*MELTBOUNDS_CACHE.*--no-remember/s);
});

it('parses nothing again where no file has changed, and says the same', async () => {
  const { cwd } = sampleRegistry();
  const cache = join(cwd, 'cache');
  const first = await check(cwd, cache, '--format', 'json');
  const seen = entriesIn(cache).length;
  expect(await check(cwd, cache, '--format', 'json')).toEqual(first);
  expect(entriesIn(cache)).toHaveLength(seen);
});

it.each([
  ['a profile', 'machines/brackwater/lantern.yaml', 'mm3/s', 'mm/s'],
  ['a sheet of readings', 'trials/2026/skiff-sound.csv', ',', ';'],
])('sees that %s has changed', { tags: 'long' }, (_, file, from, to) => {
  const { cwd, path } = sampleRegistry();
  cpSync(demo, path('.'), { recursive: true });
  const remembered = () => spawnCommand(cwd, ['check', '--today', '2026-12-31']);
  const before = remembered();
  writeFileSync(path(file), readFileSync(path(file), 'utf8').replace(from, to));
  const after = remembered();
  expect(after).not.toEqual(before);
  expect(remembered()).toEqual(after);
});

it.each([['tables', 'plumstead/wren', 'oakhollow/daisy-pla'], ['claims', 'plumstead/wren'], ['match']])(
  '%s trusts no remembered reduction that comes out otherwise',
  (...args) => {
    const { cwd } = sampleRegistry();
    const cache = join(cwd, 'cache');
    const env = { MELTBOUNDS_CACHE: cache };
    const first = spawnCommand(cwd, args, env);
    for (const path of entriesIn(cache)) falsify(path);
    const second = spawnCommand(cwd, args, env);
    expect(second.status).toBe(2);
    expect(second.err).toContain('is not what the readings give now');
    expect(spawnCommand(cwd, [...args, '--no-remember'], env)).toEqual(first);
  },
);

/** Changes all remembered profiles, and the digest of what holds them so that it fits. */
function falsifyProfiles(path: string): void {
  const [head = '', text = ''] = readFileSync(path, 'utf8').split('\n');
  const other = text.replaceAll('"data":{', '"data":{"maker":"nobody",');
  writeFileSync(path, `${head.replace(/(?<="digest":")[0-9a-f]+/, sha256Of(other))}\n${other}\n`);
}

it('says which remembered profile is not what its file holds, and replaces it', async () => {
  const { cwd, path } = sampleRegistry();
  const cache = join(cwd, 'cache');
  const first = await check(cwd, cache);
  for (const entry of entriesIn(cache)) falsifyProfiles(entry);
  const machine = path('machines/plumstead/wren.yaml');
  writeFileSync(machine, `${readFileSync(machine, 'utf8')}# Weighed again.\n`);
  const second = await check(cwd, cache);
  expect(second.status).toBe(1);
  expect(unwrapped(second.out)).toMatch(
    /profiles\/\S+.* evidence\/misremembered .*What an earlier run left behind about this file/s,
  );
  expect(await check(cwd, cache)).toEqual(first);
});

it('tables trusts no remembered profile that is parsed otherwise, and replaces it', async () => {
  const { cwd } = sampleRegistry();
  const cache = join(cwd, 'cache');
  const tables = () => remembering(cwd, cache, ['tables', 'plumstead/wren', 'oakhollow/daisy-pla']);
  const first = await tables();
  for (const entry of entriesIn(cache)) falsifyProfiles(entry);
  const second = await tables();
  expect(second.status).toBe(2);
  expect(unwrapped(second.err)).toMatch(/What an earlier run left behind about profiles\/\S+\.yaml/);
  expect(await tables()).toEqual(first);
});

it('says where an entry hides what is wrong with a file', async () => {
  const { cwd, path } = sampleRegistry();
  const cache = join(cwd, 'cache');
  writeFileSync(
    path('machines/plumstead/wren.yaml'),
    readFileSync(path('machines/plumstead/wren.yaml'), 'utf8').replace('maker:', 'makr:'),
  );
  const machine = ['profiles/machines/plumstead/wren.yaml'];
  const first = await check(cwd, cache, ...machine);
  expect(first.out).toContain('shape/unknown-key');
  for (const file of entriesIn(cache)) {
    const [head = '', text = ''] = readFileSync(file, 'utf8').split('\n');
    const other = text.replace(/"findings":\[.*\],"acknowledged"/, '"findings":[],"acknowledged"');
    writeFileSync(file, `${head.replace(/(?<="digest":")[0-9a-f]+/, sha256Of(other))}\n${other}\n`);
  }
  const second = await check(cwd, cache, ...machine);
  expect(second.status).toBe(1);
  expect(second.out).toContain('shape/unknown-key');
  expect(unwrapped(second.out)).toContain('What an earlier run left behind about this file');
  expect(await check(cwd, cache, ...machine)).toEqual(first);
});

it('sees that the sheet of a trial outside of a registry has changed', async () => {
  const { cwd, read } = sampleRegistry();
  const sheet = join(cwd, 'bench', 'wren-daisy-pla-230.csv');
  mkdirSync(join(cwd, 'bench'));
  const trial = read('trials/2026/wren-daisy-pla-230.yaml').replace(
    /^id: .*$/m,
    'id: wren-daisy-pla-230-again',
  );
  writeFileSync(join(cwd, 'bench', 'wren-daisy-pla-230-again.yaml'), trial);
  const readings = read('trials/2026/wren-daisy-pla-230.csv');
  writeFileSync(sheet, readings);
  const cache = join(cwd, 'cache');
  const before = await check(cwd, cache, 'bench/wren-daisy-pla-230-again.yaml');
  writeFileSync(sheet, readings.replace('mm3/s', 'mm/s'));
  const after = await check(cwd, cache, 'bench/wren-daisy-pla-230-again.yaml');
  expect(after).not.toEqual(before);
  expect(after.out).toContain('commandedFlow [mm/s]');
});
