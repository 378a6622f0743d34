import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { underLock } from '../../src/host/writing/folder-lock.ts';
import { replaceText } from '../../src/host/writing/replace-text.ts';
import { isAtWork, markedName, newMark, readMark } from '../../src/host/writing/writer.ts';
import { success } from '../../src/result.ts';
import { temporaryFolder } from '../sample-registry.ts';

afterEach(() => {
  vi.useRealTimers();
});

/** A lock of a process like this one, with something else about it. */
function lockLike(change: (mark: string) => string): string {
  const name = markedName(change(newMark()), 'lock');
  expect(readMark(name)).not.toBeNull();
  return name;
}

const ofAnotherComputer = () => lockLike((mark) => mark.replace('.meltbounds-', '.meltbounds-elsewhere'));
const ofTheDead = () => lockLike((mark) => mark.replace(/-\d+-(\d*-\d+-\d+)$/, '-999999999-$1'));
const ofAnEarlierProcess = () => lockLike((mark) => mark.replace(/-\d*(-\d+-\d+)$/, '-1$1'));
const ofThisProcess = () => lockLike((mark) => mark);

/** Takes the lock of a folder in which another stands; how long it waits, in s of a clock that runs ahead. */
async function waitBehind(lock: string) {
  const folder = temporaryFolder();
  writeFileSync(join(folder, lock), '');
  vi.useFakeTimers();
  let end: unknown = null;
  void underLock(folder, 'a.yaml', () => success('done')).then((result) => {
    end = result;
  });
  let waited = 0;
  for (; end === null && waited < 100; waited++) await vi.advanceTimersByTimeAsync(1000);
  return { waited, end, left: readdirSync(folder) };
}

const done = success('done');

describe('a lock', () => {
  it('is free again when the work is done, also when the work fails', async () => {
    const folder = temporaryFolder();
    const fails = underLock(folder, 'a.yaml', () => {
      expect(readdirSync(folder)).toHaveLength(1);
      throw new Error('in the middle');
    });
    await expect(fails).rejects.toThrow('in the middle');
    expect(readdirSync(folder)).toEqual([]);
    expect(await underLock(folder, 'a.yaml', () => done)).toEqual(done);
  });

  it.each([
    ['of a process that has ended', ofTheDead],
    ['of an earlier process with the number of one that runs', ofAnEarlierProcess],
  ])('%s does not count', async (_, lock) => {
    expect(await waitBehind(lock())).toEqual({ waited: 1, end: done, left: [] });
  });

  it('of another computer is waited for, and given up when it does not change for 10 s', async () => {
    const { waited, end, left } = await waitBehind(ofAnotherComputer());
    expect({ end, left }).toEqual({ end: done, left: [] });
    expect(waited).toBeGreaterThan(9);
    expect(waited).toBeLessThan(13);
  });

  it('of a process at work is never taken; after 30 s the run gives up in words', async () => {
    const lock = ofThisProcess();
    const { waited, end, left } = await waitBehind(lock);
    expect(waited).toBeGreaterThan(29);
    expect(left).toEqual([lock]);
    expect(end).toEqual({
      ok: false,
      error: {
        code: 'busy',
        message: `a.yaml is being written by another run (process ${process.pid}); nothing was written`,
        help: 'Run the command again when that one has ended, or end it.',
      },
    });
  });

  it('is of one run at a time, of however many', async () => {
    const folder = temporaryFolder();
    let inside = 0;
    const runs = Array.from({ length: 40 }, () =>
      underLock(folder, 'a.yaml', () => {
        inside += 1;
        expect(inside).toBe(1);
        writeFileSync(join(folder, 'count'), '');
        inside -= 1;
        return done;
      }),
    );
    expect(await Promise.all(runs)).toEqual(runs.map(() => done));
    expect(readdirSync(folder)).toEqual(['count']);
  });
});

describe('a writer', () => {
  it('is at work as long as its process is', () => {
    const writerOf = (name: string) => readMark(name)!.writer;
    expect(isAtWork(writerOf(ofThisProcess()))).toBe(true);
    expect(isAtWork(writerOf(ofTheDead()))).toBe(false);
    expect(isAtWork(writerOf(ofAnEarlierProcess()))).toBe(false);
    expect(isAtWork(writerOf(ofAnotherComputer()))).toBeNull();
  });

  it('is not read from names that others have given', () => {
    for (const name of ['.meltbounds-', '.meltbounds.lock', 'a.yaml', '.meltbounds-a-b-c-d-e.lock'])
      expect(readMark(name)).toBeNull();
  });
});

describe('a text', () => {
  it('is replaced only if it is still the one that was read', async () => {
    const cwd = temporaryFolder();
    mkdirSync(join(cwd, 'a'));
    writeFileSync(join(cwd, 'a/b.yaml'), '\uFEFFas they left it\n');
    const replaced = await replaceText('a/b.yaml', { before: 'old\n', after: 'new\n' }, cwd);
    expect(replaced).toMatchObject({
      ok: false,
      error: {
        code: 'changedMeanwhile',
        message: 'a/b.yaml was changed by somebody else meanwhile, and stays as they left it',
      },
    });
    expect(await replaceText('a/b.yaml', { before: 'as they left it\n', after: 'new\n' }, cwd)).toEqual(
      success(null),
    );
    expect(readFileSync(join(cwd, 'a/b.yaml'), 'utf8')).toBe('\uFEFFnew\n');
  });
});
