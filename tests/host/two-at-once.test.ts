import { spawn } from 'node:child_process';
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { bundledProgram, type Outcome, testDay } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry, temporaryFolder } from '../sample-registry.ts';
import { replacedOnce } from '../sample-texts.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const trial = 'trials/2026/wren-daisy-pla-230.yaml';

/** Starts a command in a process of its own. */
function started(cwd: string, args: readonly string[]): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [bundledProgram, ...args], {
      cwd,
      env: { ...process.env, NODE_DISABLE_COMPILE_CACHE: '1' },
    });
    const written = { out: '', err: '' };
    child.stdout.setEncoding('utf8').on('data', (text: string) => (written.out += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (written.err += text));
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, ...written }));
  });
}

const fix = ['check', '--fix', '--no-remember', '--today', testDay];
const adopt = (id: string) => ['reduce', id, '--adopt', '--no-plot'];
const both = (cwd: string, one: readonly string[], other: readonly string[]) =>
  Promise.all([started(cwd, one), started(cwd, other)]);

function edited(registry: SampleRegistry, file: string, from: string, to: string): void {
  registry.write(file, replacedOnce(registry.read(file), from, to));
}

/** The trials whose limits a filament states as measured. */
function evidenceIn(text: string): unknown[] {
  const { meltFlow = [] } = parse(text) as { meltFlow?: readonly { readonly evidence?: string }[] };
  return meltFlow.flatMap(({ evidence }) => evidence ?? []).sort();
}

/** Each pair works on the same file at the same time. */
const pairs: Readonly<Record<string, (registry: SampleRegistry) => Promise<void>>> = {
  'two limits are adopted into one filament': async (registry) => {
    registry.write(daisy, registry.read(daisy).replace(/meltFlow:\n[\s\S]*?(?=notice:)/, ''));
    expect(evidenceIn(registry.read(daisy))).toEqual([]);
    const ends = await both(registry.cwd, adopt('wren-daisy-pla-215'), adopt('wren-daisy-pla-230'));
    const line = `Wrote the limit into profiles/${daisy}.\n`;
    expect(ends.map(({ status, err }) => ({ status, err }))).toEqual([
      { status: 0, err: line },
      { status: 0, err: line },
    ]);
    expect(evidenceIn(registry.read(daisy))).toEqual(['wren-daisy-pla-215', 'wren-daisy-pla-230']);
  },
  'a limit is adopted into a filament that is fixed': async (registry) => {
    const clover = 'filaments/oakhollow/clover-petg.yaml';
    const fixed = registry.read(clover);
    edited(registry, clover, '230..255 Cel', '230..255 °C');
    const [adopted, fixing] = await both(registry.cwd, adopt('wren-clover-petg-245'), fix);
    expect(adopted).toMatchObject({ status: 0, err: `Wrote the limit into profiles/${clover}.\n` });
    expect(fixing.err).toBe(`Fixed profiles/${clover}: 1 spelling.\n`);
    const after = registry.read(clover);
    expect(evidenceIn(after)).toEqual(['wren-clover-petg-245']);
    for (const line of fixed.split('\n')) expect(after).toContain(line);
    expect(after).not.toContain('°C');
  },
  'a trial is migrated that is fixed': async (registry) => {
    const present = registry.read(trial);
    edited(registry, trial, 'scale: {resolution: 0.001 g}', 'scaleResolution: 0.001 g');
    edited(registry, trial, '230 Cel', '230 °C');
    const [migrated] = await both(registry.cwd, ['migrate'], fix);
    expect(migrated).toMatchObject({ status: 0, out: expect.stringContaining(': 1 changed.') });
    const after = registry.read(trial);
    expect(after).toContain('scale:\n  resolution: 0.001 g');
    // The fixer leaves alone what has an older shape, or comes after it.
    expect(
      after
        .replace('230 °C', '230 Cel')
        .replace('scale:\n  resolution: 0.001 g', 'scale: {resolution: 0.001 g}'),
    ).toHaveLength(present.length);
  },
  'two begin a profile of one name': async (registry) => {
    const begin = (note: string) => ['new', 'job', 'a-job', '--no-ask', '--set', `notice=${note}`];
    const ends = await both(registry.cwd, begin('the one'), begin('the other'));
    expect(ends.map(({ status }) => status).sort()).toEqual([0, 2]);
    const winner = ends[0]?.status === 0 ? 'the one' : 'the other';
    expect(registry.read('jobs/a-job.yaml')).toContain(winner);
    const loser = ends.find(({ status }) => status === 2);
    expect(loser?.out).toBe('');
    expect(loser?.err).toMatch(/already, and nothing is ever written over/);
  },
  'two begin a trial of one name in two years': async (registry) => {
    const begin = (year: number) => [
      ...['new', 'trial', 'a-ladder', '--method', 'flowLadder', '--no-ask'],
      ...['--set', `date=${year}-02-03`],
    ];
    const ends = await both(registry.cwd, begin(2025), begin(2026));
    expect(ends.map(({ status }) => status).sort()).toEqual([0, 2]);
    const files = readdirSync(join(registry.cwd, 'profiles/trials'), { recursive: true, encoding: 'utf8' });
    expect(files.filter((file) => file.endsWith('a-ladder.yaml'))).toHaveLength(1);
    expect(ends.find(({ status }) => status === 2)?.err).toMatch(/already, and nothing is ever written over/);
  },
};

async function times(count: number, work: (registry: SampleRegistry) => Promise<void>): Promise<void> {
  for (let each = 0; each < count; each++) {
    const cwd = temporaryFolder();
    const registry = sampleRegistry(cwd);
    await work(registry);
    const names = readdirSync(cwd, { recursive: true, encoding: 'utf8' });
    expect(names.filter((name) => name.includes('.meltbounds-'))).toEqual([]);
    rmSync(cwd, { recursive: true });
  }
}

describe('of two at once nothing is lost, and what is said to be written is there:', () => {
  it.each(Object.entries(pairs))('%s', { tags: 'long' }, (_, work) => times(1, work));
  it.each(Object.entries(pairs))('%s, 250 times', { tags: 'exhaustive' }, (_, work) => times(250, work));
});
