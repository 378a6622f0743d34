import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checked, runCommand } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const sheet =
  'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\n20,1000,2.98\n20,1000,2.98\n27,1000,2.97\n27,1000,2.97\n34,1000,2.95\n34,1000,2.97\n41,1000,2.93\n41,1000,2.92\n48,1000,2.65\n48,1000,2.63\n55,1000,2.22\n55,1000,2.21\n';
const base = 'node_modules/shared-limits/profiles';
const addition = 'profiles/additions/oakhollow-daisy-pla.yaml';
const today = '2026-06-01';

/** A team whose bench has run a ladder with a filament of the registry that theirs rests on. */
async function teamWithLadder() {
  const cwd = temporaryFolder();
  cpSync(join(sampleRegistry().cwd, 'profiles'), join(cwd, base), { recursive: true });
  writeFileSync(
    join(cwd, 'package.json'),
    JSON.stringify({ meltbounds: { registries: ['shared-limits', 'profiles'] } }),
  );
  mkdirSync(join(cwd, 'profiles/trials'), { recursive: true });
  writeFileSync(join(cwd, 'ladder.csv'), sheet);
  const set = ['machine=plumstead/wren', 'nozzle=hs-0.6', 'filament=oakhollow/daisy-pla'];
  const conditions = ['conditions.nozzleTemperature=225 Cel', 'scale.resolution=0.01 g'];
  const flags = [...set, ...conditions].flatMap((pair) => ['--set', pair]);
  await runCommand(cwd, ['new', 'trial', 'our-ladder', '--from', 'ladder.csv', ...flags], { today });
  const read = (path: string) => readFileSync(join(cwd, path), 'utf8');
  const edit = (path: string, from: string | RegExp, to: string) =>
    writeFileSync(join(cwd, path), read(path).replace(from, to));
  return { cwd, read, edit };
}

async function teamWithAddition() {
  const team = await teamWithLadder();
  const adopted = await runCommand(team.cwd, ['reduce', 'our-ladder', '--adopt']);
  return { ...team, adopted };
}

describe('a limit for a filament of another registry', () => {
  it('is adopted into an addition of the own registry; the other one stays as it is', async () => {
    const { cwd, read } = await teamWithLadder();
    const before = read(`${base}/filaments/oakhollow/daisy-pla.yaml`);
    const { status, err } = await runCommand(cwd, ['reduce', 'our-ladder', '--adopt']);
    expect(status).toBe(0);
    expect(err).toContain(
      `Wrote the limit into ${addition}, which adds to ${base}/filaments/oakhollow/daisy-pla.yaml.`,
    );
    expect(read(`${base}/filaments/oakhollow/daisy-pla.yaml`)).toBe(before);
    expect(read(addition)).toContain('\nfilament: oakhollow/daisy-pla\nmeltFlow:\n  - value: ');
  });

  it('is adopted once, however often it is asked for', async () => {
    const { cwd, read } = await teamWithAddition();
    const before = read(addition);
    const { err } = await runCommand(cwd, ['reduce', 'our-ladder', '--adopt']);
    expect(err).toContain(`${addition} states this limit already.`);
    expect(read(addition)).toBe(before);
  });

  it('reaches tables, which name the addition among what they came from', async () => {
    const { cwd } = await teamWithAddition();
    const { out } = await runCommand(cwd, [
      ...['tables', 'plumstead/wren', 'oakhollow/daisy-pla', '--nozzle', 'hs-0.6', '--format', 'json'],
    ]);
    const inputs = (JSON.parse(out) as { inputs: { kind: string; id: string }[] }).inputs;
    expect(inputs).toContainEqual(expect.objectContaining({ kind: 'addition', id: 'oakhollow-daisy-pla' }));
    expect(inputs).toContainEqual(expect.objectContaining({ kind: 'trial', id: 'our-ladder' }));
  });
});

describe('a comparison', () => {
  /** The same team before it measured: a copy of its folder without the addition. */
  async function compared(
    change: (team: Awaited<ReturnType<typeof teamWithAddition>>) => void,
    removes: boolean,
  ) {
    const team = await teamWithAddition();
    const earlier = join(team.cwd, 'earlier');
    cpSync(join(team.cwd, base), earlier, { recursive: true });
    cpSync(join(team.cwd, 'profiles'), earlier, { recursive: true });
    if (removes) rmSync(join(earlier, 'additions'), { recursive: true });
    const later = join(team.cwd, 'later');
    change(team);
    cpSync(join(team.cwd, base), later, { recursive: true });
    cpSync(join(team.cwd, 'profiles'), later, { recursive: true });
    return runCommand(team.cwd, ['diff', 'earlier', 'later']);
  }

  it('shows a new addition, and asks no new version of the filament that it adds to', async () => {
    const { status, out } = await compared(() => {}, true);
    expect(status).toBe(0);
    expect(out).toContain('addition oakhollow-daisy-pla: new, 1.0.0');
    expect(out).not.toContain('filament oakhollow/daisy-pla  still');
    expect(out).toMatch(/cells? of .*tables? move/);
  });

  it('asks for a major version of an addition whose limit goes down', async () => {
    const { status, out } = await compared(
      ({ edit }) => edit(addition, /- value: [\d.]+ mm3\/s/, '- value: 12 mm3/s'),
      false,
    );
    expect(status).toBe(1);
    expect(out).toContain('addition oakhollow-daisy-pla: still 1.0.0, a major change: needs 2.0.0');
  });
});

describe('an addition', () => {
  it('is judged as part of its filament, at its own place', async () => {
    const { cwd, read, edit } = await teamWithAddition();
    edit(addition, /- value: [\d.]+ mm3\/s/, '- value: 60 mm3/s');
    const { findings } = await checked(cwd);
    const line =
      read(addition)
        .split('\n')
        .findIndex((text) => text.includes('60 mm3/s')) + 1;
    expect(findings).toContainEqual(
      expect.objectContaining({
        rule: 'evidence/unsupported',
        file: addition,
        line,
        pointer: '/meltFlow/0/value',
      }),
    );
    expect(new Set(findings.map(({ file }) => file))).toEqual(new Set([addition]));
  });

  it('cannot touch a temperature of its filament', async () => {
    const { cwd, edit } = await teamWithAddition();
    edit(
      addition,
      'meltFlow:',
      'nozzleTemperature:\n  - {value: 200..290 Cel, basis: assumed, reason: faster}\nmeltFlow:',
    );
    expect((await checked(cwd)).findings).toMatchObject([
      { rule: 'shape/unknown-key', file: addition, pointer: '/nozzleTemperature' },
    ]);
  });

  it('holds nothing but what a trial has shown', async () => {
    const { cwd, edit } = await teamWithAddition();
    edit(addition, 'basis: measured', 'basis: claimed');
    const { findings } = await checked(cwd);
    expect(findings.map(({ rule, allowed }) => ({ rule, allowed }))).toContainEqual({
      rule: 'shape/not-a-choice',
      allowed: 'measured',
    });
  });

  it('must name a filament that is there', async () => {
    const { cwd, edit } = await teamWithAddition();
    edit(addition, 'filament: oakhollow/daisy-pla', 'filament: oakhollow/dasy-pla');
    expect((await checked(cwd)).findings).toContainEqual(
      expect.objectContaining({ rule: 'references/dangling', pointer: '/filament' }),
    );
  });

  it('may be of the same registry as its filament', async () => {
    const registry = sampleRegistry();
    registry.write(
      'additions/daisy-second.yaml',
      "kind: addition\nid: daisy-second\nversion: 1.0.0\nfilament: oakhollow/daisy-pla\nmeltFlow:\n  - value: 20 mm3/s\n    basis: measured\n    evidence: wren-daisy-pla-215\n    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 215 Cel, batch: 26-0001}\n    date: '2026-02-10'\n",
    );
    const { findings } = await checked(registry.cwd);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
