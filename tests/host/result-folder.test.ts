import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { resultFolder, usualResultFolder } from '../../src/host/result-folder.ts';

function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'meltbounds-results-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

const key = 'ab'.padEnd(64, '0');

describe('a folder of results', () => {
  it('gives back what was put into it, also to a later run', () => {
    const folder = emptyFolder();
    expect(resultFolder(folder).get(key)).toBeNull();
    resultFolder(folder).put(key, 'an entry');
    expect(resultFolder(folder).get(key)).toBe('an entry');
  });

  it('belongs to its user alone', () => {
    const folder = join(emptyFolder(), 'new');
    resultFolder(folder).put(key, 'an entry');
    expect(statSync(folder).mode & 0o077).toBe(0);
  });

  it('remembers nothing where the folder cannot be made, and says nothing', () => {
    const file = join(emptyFolder(), 'file');
    writeFileSync(file, '');
    const store = resultFolder(file);
    store.put(key, 'an entry');
    expect(store.get(key)).toBeNull();
  });

  it('reads no link', () => {
    const folder = emptyFolder();
    const elsewhere = join(emptyFolder(), 'secret');
    writeFileSync(elsewhere, 'a secret');
    mkdirSync(join(folder, 'ab'));
    symlinkSync(elsewhere, join(folder, 'ab', `${key.slice(2)}.json`));
    expect(resultFolder(folder).get(key)).toBeNull();
  });

  it('stays below its size: what was written first goes first', () => {
    const folder = emptyFolder();
    const entry = 'x'.repeat(400_000);
    const keys = ['1', '2', '3', '4'].map((digit) => 'ab'.padEnd(64, digit));
    for (const [index, each] of keys.entries()) {
      resultFolder(folder).put(each, entry);
      utimesSync(join(folder, 'ab', `${each.slice(2)}.json`), index, index);
    }
    resultFolder(folder).put('ab'.padEnd(64, '5'), entry);
    expect(
      readdirSync(join(folder, 'ab'))
        .map((name) => name[0])
        .sort(),
    ).toEqual(['4', '5']);
  });
});

describe('the usual folder of results', () => {
  it.each([
    [{ MELTBOUNDS_CACHE: '/a', XDG_CACHE_HOME: '/b' }, 'linux', /^\/a$/],
    [{ XDG_CACHE_HOME: '/b' }, 'linux', /^\/b\/meltbounds$/],
    [{}, 'linux', /\/\.cache\/meltbounds$/],
    [{}, 'darwin', /\/Library\/Caches\/meltbounds$/],
    [{ LOCALAPPDATA: '/c' }, 'win32', /^\/c\/meltbounds\/Cache$/],
  ] as const)('with %j on %s', (env, platform, folder) => {
    expect(usualResultFolder(env, platform)).toMatch(folder);
  });
});
