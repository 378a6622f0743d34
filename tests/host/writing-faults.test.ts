import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { bundledProgram, testDay } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

// Between two calls that change the file system nothing changes. So whoever ends a run before each of them, and in the
// middle of each write, has seen every state that a kill can leave.

const faults = pathToFileURL(fileURLToPath(new URL('./writing-faults.mjs', import.meta.url))).href;

interface Writing {
  readonly args: readonly string[];
  /** Makes ready the working directory, which holds the sample registry. */
  readonly prepare?: (cwd: string) => void;
  /** Where the calls are counted; by default all but the cache. */
  readonly under?: string;
  /** Every how manieth call is tried, where they are very many and alike; each by default. */
  readonly every?: number;
}

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];
const filament = 'profiles/filaments/oakhollow/daisy-pla.yaml';
const ladder =
  'commanded flow [mm3/s],feed length [mm],extruded mass [g]\n10,500,1.490\n14,500,1.489\n18,500,1.488\n';

const replace = (cwd: string, path: string, from: string, to: string) => {
  const text = readFileSync(join(cwd, path), 'utf8');
  expect(text).toContain(from);
  writeFileSync(join(cwd, path), text.replace(from, to));
};

/** Every command that writes, over files that are there and where none are. */
const writings: Readonly<Record<string, Writing>> = {
  'reduce --adopt': { args: ['reduce', 'wren-clover-petg-245', '--adopt', '--no-plot'] },
  'check --fix': {
    args: ['check', '--fix', '--today', testDay, '--no-remember'],
    prepare: (cwd) => {
      replace(cwd, filament, '200..235 Cel', '200 .. 235 °C');
      replace(cwd, 'profiles/machines/plumstead/wren.yaml', '8200 mm/s2', '8200 mm/s²');
    },
  },
  migrate: {
    args: ['migrate'],
    prepare: (cwd) =>
      replace(
        cwd,
        'profiles/trials/2026/wren-daisy-pla-230.yaml',
        'scale: {resolution: 0.001 g}',
        'scaleResolution: 0.001 g',
      ),
  },
  'new with a sheet': {
    args: ['new', 'trial', 'a-ladder', '--from', 'ladder.csv', '--method', 'flowLadder', '--no-ask'],
    prepare: (cwd) => writeFileSync(join(cwd, 'ladder.csv'), ladder),
  },
  'init of a new folder': { args: ['init', 'limits'] },
  'init of a folder that is there': {
    args: ['init', 'limits'],
    prepare: (cwd) => mkdirSync(join(cwd, 'limits')),
  },
  'index --out': { args: ['index', 'profiles', '--out', 'index.json'] },
  'index --out over one': {
    args: ['index', 'profiles', '--out', 'index.json'],
    prepare: (cwd) => writeFileSync(join(cwd, 'index.json'), 'old\n'),
  },
  'tables --out': { args: ['tables', ...pairing, '--out', 'tables', '--today', testDay] },
  'tables --out over some': {
    args: ['tables', ...pairing, '--out', 'tables', '--today', testDay],
    prepare: (cwd) => {
      mkdirSync(join(cwd, 'tables'));
      writeFileSync(join(cwd, 'tables/table.csv'), 'old\n');
    },
  },
  'export --out': { args: ['export', '--out', 'export', '--today', testDay] },
  'export --out over some': {
    args: ['export', '--out', 'export', '--today', testDay],
    prepare: (cwd) => {
      mkdirSync(join(cwd, 'export'));
      writeFileSync(join(cwd, 'export/limits.parquet'), 'old\n');
    },
  },
  'site --out': { args: ['site', '--out', 'site', '--today', testDay], every: 41 },
  'site --out over one': {
    args: ['site', '--out', 'site', '--today', testDay],
    prepare: (cwd) => {
      expect(runWith(cwd, { args: ['site', '--out', 'site', '--today', testDay] }, 'none', 0).status).toBe(0);
      rmSync(join(cwd, 'remembered'), { recursive: true, force: true });
      replace(cwd, filament, '200..235 Cel', '200..230 Cel');
    },
    every: 7,
  },
  'plan --out': { args: ['plan', ...pairing, '--out', 'next', '--today', testDay] },
  'reduce --plot': { args: ['reduce', 'wren-daisy-pla-230', '--plot', 'ladder.svg'] },
  'the cache of a check': { args: ['check', '--today', testDay], under: 'remembered' },
};

/** Runs a command with a fault at one of its calls that change something; at none for `at` 0. */
function runWith(cwd: string, { args, under = '' }: Writing, fault: string, at: number, log?: string) {
  return spawnSync(process.execPath, ['--import', faults, bundledProgram, ...args], {
    cwd,
    encoding: 'utf8',
    env: {
      ...process.env,
      NODE_DISABLE_COMPILE_CACHE: '1',
      MELTBOUNDS_CACHE: join(cwd, 'remembered'),
      FAULT: fault,
      FAULT_AT: String(at),
      FAULT_UNDER: under,
      ...(log !== undefined && { FAULT_LOG: log }),
    },
  });
}

/** All files below a folder by their paths, the cache apart. */
function filesIn(cwd: string): Record<string, string> {
  const paths = readdirSync(cwd, { recursive: true, encoding: 'utf8' }).sort();
  const files = paths.filter((path) => statSync(join(cwd, path)).isFile());
  return Object.fromEntries(files.map((path) => [path, readFileSync(join(cwd, path), 'utf8')]));
}

const isCache = (path: string) => path.startsWith('remembered');
const isLeftover = (path: string) => path.split('/').some((step) => step.startsWith('.meltbounds-'));

function without(files: Record<string, string>, unwanted: (path: string) => boolean): Record<string, string> {
  return Object.fromEntries(Object.entries(files).filter(([path]) => !unwanted(path)));
}

function workplace(writing: Writing): string {
  const { cwd } = sampleRegistry(join(temporaryFolder(), 'work'));
  writing.prepare?.(cwd);
  return cwd;
}

interface Rehearsal {
  readonly start: string;
  readonly before: Record<string, string>;
  readonly after: Record<string, string>;
  readonly calls: number;
}

/** What a command does that nothing happens to. */
function rehearse(writing: Writing): Rehearsal {
  const start = workplace(writing);
  const cwd = join(temporaryFolder(), 'work');
  cpSync(start, cwd, { recursive: true });
  const log = join(temporaryFolder(), 'log');
  const { status, stderr } = runWith(cwd, writing, 'none', 0, log);
  expect({ status, stderr }).toMatchObject({ status: 0 });
  const calls = readFileSync(log, 'utf8').trimEnd().split('\n').length;
  return { start, before: filesIn(start), after: filesIn(cwd), calls };
}

function tryFault(writing: Writing, { start }: Rehearsal, fault: string, at: number) {
  const cwd = join(temporaryFolder(), 'work');
  cpSync(start, cwd, { recursive: true });
  const end = runWith(cwd, writing, fault, at);
  return { cwd, end };
}

/** Each file is the old or the new one. */
function expectOldOrNew(found: Record<string, string>, { before, after }: Rehearsal, what: string): void {
  for (const path of Object.keys({ ...before, ...after, ...found })) {
    expect([before[path], after[path]], `${what}: ${path}`).toContain(found[path]);
  }
}

function killEverywhere(writing: Writing): void {
  const rehearsal = rehearse(writing);
  expect(rehearsal.calls).toBeGreaterThan(3);
  for (let at = 1; at <= rehearsal.calls; at += writing.every ?? 1) {
    const { cwd, end } = tryFault(writing, rehearsal, 'SIGKILL', at);
    expect(end.signal, `kill at ${at}`).toBe('SIGKILL');
    // What is remembered of pages has a name by the folder that they are written to.
    const isAside = (path: string) => isLeftover(path) || (writing.under === undefined && isCache(path));
    expectOldOrNew(without(filesIn(cwd), isAside), rehearsal, `kill at ${at}`);
    // `plan` writes over nothing, nor does `new`: what is there already is the new one, whole.
    const again = runWith(cwd, writing, 'none', 0);
    const found = filesIn(cwd);
    expect(
      without(found, (path) => isCache(path) && !isLeftover(path)),
      `run after a kill at ${at}: ${again.stderr}`,
    ).toEqual(without(rehearsal.after, isCache));
    rmSync(cwd, { recursive: true });
  }
}

function failEverywhere(writing: Writing, code: string): void {
  const rehearsal = rehearse(writing);
  for (let at = 1; at <= rehearsal.calls; at += writing.every ?? 1) {
    const { cwd, end } = tryFault(writing, rehearsal, code, at);
    const what = `${code} at ${at}: ${end.stdout}${end.stderr}`;
    const found = filesIn(cwd);
    expectOldOrNew(
      without(found, (path) => isLeftover(path) || (writing.under === undefined && isCache(path))),
      rehearsal,
      what,
    );
    // What cannot be removed is left to the next run; other calls are asked for, and their failure is told.
    // What cannot be remembered costs time only.
    const isAside = (path: string) => isLeftover(path) || isCache(path);
    if (end.status === 0) expect(without(found, isAside), what).toEqual(without(rehearsal.after, isCache));
    else {
      expect(end.status, what).toBe(2);
      expect(end.stderr, what).toMatch(new RegExp(`cannot be (?:written|made) \\(${code}\\)|\\(${code}\\)`));
    }
    rmSync(cwd, { recursive: true });
  }
}

/** Some forty programs are started one after the other, ms. */
const patient = 300_000;

const names = Object.keys(writings).filter((name) => name !== 'reduce --adopt');
const codes = ['ENOSPC', 'EROFS', 'EACCES', 'EIO'];

describe('a kill at any call leaves the old or the new, and the next run cleans up:', () => {
  it('reduce --adopt', { tags: 'long', timeout: patient }, () => killEverywhere(writings['reduce --adopt']!));
  it.each(names)('%s', { tags: 'exhaustive' }, (name) => killEverywhere(writings[name]!));
});

describe('a system that refuses any call is told of, with status 2:', () => {
  it('reduce --adopt, ENOSPC', { tags: 'long', timeout: patient }, () =>
    failEverywhere(writings['reduce --adopt']!, 'ENOSPC'),
  );
  it.each([
    ...codes.map((code) => ['reduce --adopt', code] as const),
    ...names.flatMap((name) => codes.map((code) => [name, code] as const)),
  ])('%s, %s', { tags: 'exhaustive' }, (name, code) => failEverywhere(writings[name]!, code));
});

describe('what is left behind', () => {
  it('stays while its process is at work, and a folder is not waited for that nobody holds', () => {
    const cwd = workplace(writings['index --out']!);
    // This process is at work.
    const own = ownMark(cwd);
    writeFileSync(join(cwd, `${own}.part`), 'half');
    writeFileSync(join(cwd, `${own.replace(/-\d+-(\d*)-/, '-999999999-$1-')}.lock`), '');
    expect(runWith(cwd, writings['index --out']!, 'none', 0).status).toBe(0);
    expect(existsSync(join(cwd, `${own}.part`))).toBe(true);
    expect(readdirSync(cwd).filter(isLeftover)).toEqual([`${own}.part`]);
  });

  it('goes where `new` finds a trial that is there already, from the folder of all years as well', () => {
    const cwd = workplace(writings['new with a sheet']!);
    expect(runWith(cwd, writings['new with a sheet']!, 'none', 0).status).toBe(0);
    const dead = ownMark(workplace(writings['index --out']!)).replace(/-\d+-(\d*)-/, '-999999999-$1-');
    writeFileSync(join(cwd, 'profiles/trials', `${dead}.lock`), '');
    expect(runWith(cwd, writings['new with a sheet']!, 'none', 0).status).toBe(2);
    expect(readdirSync(join(cwd, 'profiles/trials')).filter(isLeftover)).toEqual([]);
  });
});

/** The mark of this process, learnt from what a run leaves that is killed, with the number and start of this one. */
function ownMark(cwd: string): string {
  runWith(cwd, writings['index --out']!, 'SIGKILL', 2);
  const [left = ''] = readdirSync(cwd).filter(isLeftover);
  rmSync(join(cwd, left));
  const start = readFileSync('/proc/self/stat', 'utf8').split(') ').at(-1)?.split(' ')[19] ?? '';
  return left.replace(/-\d+-\d*-(\d+-\d+)\.lock$/, `-${process.pid}-${start}-$1`);
}
