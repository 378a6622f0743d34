import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { methodNames } from '../../src/bench/method-facts.ts';
import { methodOf } from '../../src/bench/methods.ts';
import type { Answer, Asker } from '../../src/host/asker.ts';
import { checked, runCommand } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';
import { isMandatory, uncommented } from '../scaffold/uncommented.ts';

const demo = fileURLToPath(new URL('../../profiles', import.meta.url));

/** A copy of the demo registry, which the examples of the schemas speak of. */
function demoRegistry(): string {
  const cwd = temporaryFolder();
  cpSync(demo, join(cwd, 'profiles'), { recursive: true });
  return cwd;
}

const sheet =
  'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\n20,1000,2.98\n27,1000,2.97\n34,1000,2.95\n41,1000,2.92\n48,1000,2.65\n55,1000,2.22\n';

/** For each kind what a user would answer, and where the file then stands. */
const started: readonly (readonly [kind: string, id: string, path: string, flags: readonly string[]])[] = [
  ['machine', 'brackwater/candle', 'machines/brackwater/candle.yaml', ['name=Lantern Candle']],
  ['filament', 'ashgrove/limelight-pla', 'filaments/ashgrove/limelight-pla.yaml', ['name=Limelight PLA']],
  ['policy', 'tour', 'policies/tour.yaml', ['name=Tour']],
  ['job', 'lamp-foot', 'jobs/lamp-foot.yaml', ['name=Lamp foot']],
  ['source', 'stage-handbook', 'sources/stage-handbook.yaml', []],
];

describe('new', () => {
  test.each(started)(
    '%s, with the examples of its mandatory keys, passes check',
    async (kind, id, path, flags) => {
      const cwd = demoRegistry();
      const set = flags.flatMap((flag) => ['--set', flag]);
      const { status, out } = await runCommand(cwd, ['new', kind, id, ...set]);
      expect({ status, out }).toEqual({ status: 0, out: `profiles/${path}\n` });
      const file = join(cwd, 'profiles', path);
      writeFileSync(file, uncommented(readFileSync(file, 'utf8'), isMandatory));
      const { findings } = await checked(cwd, file);
      // What may be left out is told, for what its absence makes silent.
      expect(findings.filter(({ rule }) => rule !== 'safety/asleep')).toEqual([]);
    },
  );

  it('trial starts from a bench sheet that passes check and can be reduced', async () => {
    const cwd = demoRegistry();
    writeFileSync(join(cwd, 'ladder.csv'), sheet);
    const id = 'lantern-new-spool-230';
    const { status, out } = await runCommand(cwd, ['new', 'trial', id, '--from', 'ladder.csv']);
    expect(status).toBe(0);
    expect(out).toBe(`profiles/trials/2026/${id}.csv\nprofiles/trials/2026/${id}.yaml\n`);
    const file = join(cwd, 'profiles/trials/2026', `${id}.yaml`);
    writeFileSync(file, uncommented(readFileSync(file, 'utf8'), isMandatory));
    expect((await checked(cwd, file)).findings).toEqual([]);
    expect((await runCommand(cwd, ['reduce', id])).out).toContain('Melt flow limit 44');
  });

  it('trial can hold the readings itself', async () => {
    const { cwd } = sampleRegistry();
    writeFileSync(join(cwd, 'ladder.csv'), sheet);
    const { out } = await runCommand(cwd, [
      'new',
      'trial',
      'x',
      '--from',
      'ladder.csv',
      '--inline',
      '--dry-run',
    ]);
    expect(out).toContain('    - [20, 1000, 2.98]\n');
    expect(existsSync(join(cwd, 'profiles/trials/2026/x.csv'))).toBe(false);
  });

  it('trial takes the method whose columns the sheet has', async () => {
    const { cwd } = sampleRegistry();
    writeFileSync(join(cwd, 'drying.csv'), 'elapsedTime [h],mass [g]\n0,1010.2\n1,1008.1\n2,1007.0\n');
    const { out } = await runCommand(cwd, ['new', 'trial', 'x', '--from', 'drying.csv', '--dry-run']);
    expect(out).toContain('\nmethod: dryingCurve\n');
    expect(out).toContain('\n#  dryingTemperature: 50 Cel\n');
  });

  test.each(methodNames)(
    'trial of the method %s offers its columns and what it must name',
    async (method) => {
      const registry = sampleRegistry();
      const { out, err } = await runCommand(registry.cwd, ['new', 'trial', 'x', '--method', method]);
      const text = readFileSync(join(registry.cwd, out.trim()), 'utf8');
      const { columns, requiredKeys } = methodOf(method);
      const offered = [...text.matchAll(/^# {2}(?:# )?#? {0,2} {2}(\w+): /gm)].map(([, key]) => key);
      for (const name of Object.keys(columns)) expect(text).toMatch(new RegExp(`^#.* #?${name}: `, 'm'));
      expect(offered).not.toContain(method === 'soundLevel' ? 'extrudedMass' : 'background');
      const open = /Left to fill in: (.*)\./.exec(err)?.[1];
      for (const { path } of requiredKeys) expect(open).toContain(path[0]);
    },
  );

  it('names the schema on the way from the file to where it is', async () => {
    const { cwd } = sampleRegistry();
    const line = async () =>
      (await runCommand(cwd, ['new', 'filament', 'a/b', '--dry-run'])).out.split('\n')[0];
    expect(await line()).toContain('$schema=../../../node_modules/meltbounds/schema/filament.schema.json');
    mkdirSync(join(cwd, 'schema'));
    writeFileSync(join(cwd, 'schema/filament.schema.json'), '{}');
    expect(await line()).toContain('$schema=../../../schema/filament.schema.json');
  });

  it('says what is left to fill in and which profiles are missing', async () => {
    const { err } = await runCommand(sampleRegistry().cwd, [
      ...['new', 'filament', 'oakhollow/tulip-pla', '--set', 'sheet=tulip-sheet', '--set', 'polymer=PLA'],
    ]);
    expect(err).toContain('Left to fill in: name, maker, designation, diameter, density, nozzleTemperature');
    expect(err).toContain('Not there yet: meltbounds new source tulip-sheet');
    expect(err).toContain('Then: meltbounds check profiles/filaments/oakhollow/tulip-pla.yaml');
  });

  it('prints with --dry-run and writes nothing', async () => {
    const registry = sampleRegistry();
    const { out } = await runCommand(registry.cwd, ['new', 'job', 'ring', '--dry-run']);
    expect(out).toContain('\nid: ring\n');
    expect(existsSync(registry.path('jobs/ring.yaml'))).toBe(false);
  });
});

describe('new refuses, with status 2 and nothing written:', () => {
  const refusals: readonly (readonly [what: string, args: readonly string[], message: string])[] = [
    ['no id', ['filament'], 'needs an id'],
    ['an unknown kind', ['widget', 'x'], 'Name one of: machine, filament, trial'],
    ['an id out of the registry', ['filament', '../../x'], 'does not have the form it needs'],
    ['an id that is there', ['filament', 'oakhollow/daisy-pla'], 'already'],
    ['a wrong unit', ['filament', 'a/b', '--set', 'diameter=1.75 kg'], '1.75'],
    ['an unknown key', ['filament', 'a/b', '--set', 'dimeter=1'], 'Did you mean "diameter"?'],
    ['a pair without a value', ['filament', 'a/b', '--set', 'diameter'], '--set key=value'],
    ['a sheet for another kind', ['job', 'x', '--from', 'x.csv'], '--from starts a trial'],
    ['a trial without a method', ['trial', 'x'], 'Name one with --method: flowLadder'],
    ['an unknown method', ['trial', 'x', '--method', 'guess'], 'Allowed choices are flowLadder'],
    ['a sheet that is not there', ['trial', 'x', '--from', 'x.csv'], 'cannot be read'],
  ];

  test.each(refusals)('%s', async (_, args, message) => {
    const registry = sampleRegistry();
    const before = readdirSync(registry.cwd, { recursive: true });
    const { status, err } = await runCommand(registry.cwd, ['new', ...args]);
    expect(status).toBe(2);
    expect(err).toContain(message);
    expect(readdirSync(registry.cwd, { recursive: true })).toEqual(before);
  });

  it('a sheet with a wrong header, naming its line', async () => {
    const registry = sampleRegistry();
    writeFileSync(join(registry.cwd, 'ladder.csv'), sheet.replace('[g]', '[mm]'));
    const { status, err } = await runCommand(registry.cwd, ['new', 'trial', 'x', '--from', 'ladder.csv']);
    expect(status).toBe(2);
    expect(err).toContain('ladder.csv:1: ');
  });

  it.each([
    ['out of the registry', () => temporaryFolder()],
    // Its path begins as that of the registry does.
    ['to a folder beside it', (cwd: string) => mkdirSync(join(cwd, 'profiles-old'), { recursive: true })],
  ])('a folder that is a link %s', async (_, madeFor) => {
    const registry = sampleRegistry();
    const outside = madeFor(registry.cwd) ?? '';
    symlinkSync(outside, registry.path('filaments/elsewhere'));
    const { status, err } = await runCommand(registry.cwd, ['new', 'filament', 'elsewhere/x']);
    expect(status).toBe(2);
    expect(err).toContain('link');
    expect(readdirSync(outside)).toEqual([]);
  });
});

/** Somebody who answers by the key that a question is about; what is not listed stays open. */
function answering(answers: Readonly<Record<string, Answer | string>>): { asker: Asker; asked: string[] } {
  const asked: string[] = [];
  const answer = (message: string): Answer => {
    const key = message.split(':')[0] ?? '';
    asked.push(key);
    const given = answers[key];
    if (given === 'stopped') return 'stopped';
    return typeof given === 'string' ? { text: given } : (given ?? { text: null });
  };
  return {
    asked,
    asker: {
      text: async ({ message }) => answer(message),
      choose: async ({ message }) => answer(message),
      confirm: async () => false,
    },
  };
}

describe('on a terminal, new', () => {
  it('asks for what is mandatory and writes the answers', async () => {
    const registry = sampleRegistry();
    const { asker, asked } = answering({ id: 'oakhollow/tulip-pla', diameter: '1.75 mm' });
    const { status } = await runCommand(registry.cwd, ['new', 'filament', '--set', 'polymer=PLA'], { asker });
    expect(status).toBe(0);
    expect(asked).toContain('density');
    expect(asked).not.toContain('polymer');
    const text = registry.read('filaments/oakhollow/tulip-pla.yaml');
    expect(text).toContain('\ndiameter: 1.75 mm\n');
    expect(text).toContain('\n#maker: ');
  });

  it('offers the nozzles of the machine that was chosen', async () => {
    const registry = sampleRegistry();
    const offered: (readonly string[])[] = [];
    const { asker } = answering({ machine: 'plumstead/wren', method: 'flowLadder' });
    const listening: Asker = {
      ...asker,
      choose: (question) => {
        if (question.message.startsWith('nozzle:')) offered.push(question.choices);
        return asker.choose(question);
      },
    };
    await runCommand(registry.cwd, ['new', 'trial', 'x', '--dry-run'], { asker: listening });
    expect(offered).toEqual([expect.arrayContaining(['hs-0.6'])]);
  });

  it('asks a trial for its batch and the step of its scale, which may be left out', async () => {
    const { asker, asked } = answering({
      method: 'flowLadder',
      batch: '26-0117',
      'scale.resolution': '0.001 g',
    });
    const { out } = await runCommand(sampleRegistry().cwd, ['new', 'trial', 'x', '--dry-run'], { asker });
    expect(asked).toEqual(expect.arrayContaining(['batch', 'scale.resolution']));
    expect(out).toContain('\nbatch: 26-0117\n');
    expect(out).toMatch(/\nscale:\n(?: +#.*\n)* {2}resolution: 0\.001 g\n/);
  });

  it('offers the polymer as the designation, to be taken over or completed', async () => {
    const suggested: string[] = [];
    const { asker } = answering({ id: 'oakhollow/tulip-pa6' });
    const listening: Asker = {
      ...asker,
      text: (question) => {
        if (question.message.startsWith('designation:')) suggested.push(question.suggestion);
        return asker.text(question);
      },
    };
    const args = ['new', 'filament', '--set', 'polymer=PA6', '--dry-run'];
    const { out } = await runCommand(sampleRegistry().cwd, args, { asker: listening });
    expect(suggested).toEqual(['PA6']);
    expect(out).toContain('\n#designation: PA6\n');
  });

  it('never calls a mandatory answer open, and cannot do without an id', async () => {
    const opens = new Map<string, string | null>();
    const { asker } = answering({ id: 'oakhollow/tulip-pla' });
    const listening: Asker = {
      ...asker,
      text: (question) => {
        opens.set(question.message.split(':')[0] ?? '', question.open);
        return asker.text(question);
      },
    };
    await runCommand(sampleRegistry().cwd, ['new', 'filament', '--dry-run'], { asker: listening });
    expect(opens.get('id')).toBeNull();
    expect(opens.get('diameter')).toBe('Enter alone: fill it in later, in the file');
    expect([...opens.values()].filter((open) => open?.includes('leave'))).toEqual([]);
  });

  it('leaves nothing behind when the user stops', async () => {
    const registry = sampleRegistry();
    const before = registry.size();
    const { asker } = answering({ id: 'oakhollow/tulip-pla', maker: 'stopped' });
    const { status, err } = await runCommand(registry.cwd, ['new', 'filament'], { asker });
    expect({ status, err, size: registry.size() }).toEqual({
      status: 2,
      err: 'Stopped; nothing was written.\n',
      size: before,
    });
  });

  it('asks nothing with --no-ask', async () => {
    const { asker, asked } = answering({});
    await runCommand(sampleRegistry().cwd, ['new', 'job', 'ring', '--no-ask', '--dry-run'], { asker });
    expect(asked).toEqual([]);
  });
});
