import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { syncFolder } from '../../src/host/writing/sync-folder.ts';
import { temporaryFolder } from '../sample-registry.ts';

type Files = Readonly<Record<string, string>>;

const sync = (cwd: string, files: Files) =>
  syncFolder(
    Object.entries(files).map(([path, text]) => ({ path, text })),
    join(cwd, 'out'),
    'out',
    cwd,
  );
const done = (changed: number, removed: number) => ({
  ok: true,
  value: { files: expect.any(Number), changed, removed },
});
const read = (cwd: string, path: string) => readFileSync(join(cwd, 'out', path), 'utf8');
const three: Files = { 'a.html': 'a\n', 'b/b.html': 'b\n', 'b/c/c.html': 'c\n' };

it('writes all the first time, then only what has changed', async () => {
  const cwd = temporaryFolder();
  expect(await sync(cwd, three)).toEqual(done(3, 0));
  const before = statSync(join(cwd, 'out/a.html')).ino;
  expect(await sync(cwd, three)).toEqual(done(0, 0));
  expect(await sync(cwd, { ...three, 'b/b.html': 'new\n', 'd.html': 'd\n' })).toEqual(done(2, 0));
  expect(read(cwd, 'b/b.html')).toBe('new\n');
  expect(statSync(join(cwd, 'out/a.html')).ino).toBe(before);
  expect(readdirSync(join(cwd, 'out')).sort()).toEqual(['a.html', 'b', 'd.html', 'files.json']);
});

it('writes anew what somebody has changed or removed', async () => {
  const cwd = temporaryFolder();
  await sync(cwd, three);
  writeFileSync(join(cwd, 'out/a.html'), 'mine\n');
  expect(await sync(cwd, three)).toEqual(done(1, 0));
  expect(read(cwd, 'a.html')).toBe('a\n');
});

it('removes what is gone, unless somebody has changed it', async () => {
  const cwd = temporaryFolder();
  await sync(cwd, three);
  writeFileSync(join(cwd, 'out/b/b.html'), 'mine\n');
  expect(await sync(cwd, { 'a.html': 'a\n' })).toEqual(done(0, 1));
  expect(existsSync(join(cwd, 'out/b/c/c.html'))).toBe(false);
  expect(read(cwd, 'b/b.html')).toBe('mine\n');
  expect(JSON.parse(read(cwd, 'files.json'))).toMatchObject({ files: { 'a.html': expect.any(String) } });
});

it('writes over no file of others, and writes nothing then', async () => {
  const cwd = temporaryFolder();
  mkdirSync(join(cwd, 'out'));
  writeFileSync(join(cwd, 'out/a.html'), 'mine\n');
  expect(await sync(cwd, three)).toMatchObject({ ok: false, error: { code: 'notOurs' } });
  expect(readdirSync(join(cwd, 'out'))).toEqual(['a.html']);
});

it.each(['../kept.html', '/kept.html', 'b/../../kept.html', 'C:kept.html', '..\\kept.html'])(
  'obeys no list that names %s',
  async (path) => {
    const cwd = temporaryFolder();
    await sync(cwd, three);
    writeFileSync(join(cwd, 'kept.html'), 'a\n');
    const { files } = JSON.parse(read(cwd, 'files.json'));
    const list = { format: 'meltbounds-files/1', files: { ...files, [path]: files['a.html'] } };
    writeFileSync(join(cwd, 'out/files.json'), JSON.stringify(list));
    expect(await sync(cwd, three)).toEqual(done(0, 0));
    expect(existsSync(join(cwd, 'kept.html'))).toBe(true);
  },
);

it('follows no link out of its folder', async () => {
  const cwd = temporaryFolder();
  const elsewhere = temporaryFolder();
  mkdirSync(join(cwd, 'out'));
  symlinkSync(elsewhere, join(cwd, 'out/b'));
  expect(await sync(cwd, three)).toMatchObject({ ok: false, error: { code: 'linkElsewhere' } });
  expect(readdirSync(elsewhere)).toEqual([]);
});
