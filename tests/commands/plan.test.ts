import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checked, runCommand, unwrapped } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];
const id = 'wren-daisy-pla-220';

function plan(cwd: string, ...args: string[]) {
  return runCommand(cwd, ['plan', ...args]);
}

describe('what to know before anything is heated up', () => {
  const worn = () => {
    const registry = sampleRegistry();
    const wren = 'machines/plumstead/wren.yaml';
    registry.edit(
      wren,
      'material: hardenedSteel}\n      - {id: hs-0.6',
      'material: brass}\n      - {id: hs-0.6',
    );
    registry.edit(wren, '\nnotice:', '\ninvented: true\nnotice:');
    registry.write(
      wren,
      `${registry.read(wren)}fieldNotes:\n  - {date: '2026-05-07', what: It oozes, effect: Blobs}\n`,
    );
    const daisy = 'filaments/oakhollow/daisy-pla.yaml';
    registry.edit(
      daisy,
      'designation: PLA',
      'designation: PLA-GF20\nfillers: [{symbol: GF, massFraction: 20 %}]',
    );
    return registry.cwd;
  };
  const sentence = 'Nozzle hs-0.4 of brass is worn by glass (GF).';
  const origin =
    'Simulated readings (trials wren-daisy-pla-215 and wren-daisy-pla-230) and invented profiles (machine plumstead/wren): no bench has measured this.';
  const quirk = '2026-05-07, plumstead/wren: It oozes. Blobs.';

  it.each(['text', 'markdown'])('stands at the head of the plan as %s, and quirks below', async (format) => {
    const { out } = await plan(worn(), ...pairing, '--nozzle', 'hs-0.4', '--format', format);
    const text = unwrapped(out).replaceAll('*', '');
    expect(text).toContain(origin);
    expect(text.indexOf(sentence)).toBeGreaterThan(text.indexOf(origin));
    expect(text.indexOf(sentence)).toBeLessThan(text.indexOf('Expected limit'));
    expect(text.indexOf(quirk)).toBeGreaterThan(text.indexOf('In total'));
  });

  it('is in the JSON with codes', async () => {
    const { out } = await plan(worn(), ...pairing, '--nozzle', 'hs-0.4', '--format', 'json');
    const { warnings, quirks, origin: named } = JSON.parse(out);
    expect(warnings[0]).toEqual({ warning: 'nozzleWears', text: sentence });
    expect(quirks).toMatchObject([{ date: '2026-05-07', what: 'It oozes', wayRound: null, concerns: null }]);
    expect(named.invented).toEqual([{ kind: 'machine', id: 'plumstead/wren' }]);
  });

  it('leaves out the machine where the method needs none', async () => {
    const { out } = await plan(worn(), ...pairing, '--method', 'dryingCurve', '--format', 'json');
    expect(JSON.parse(out)).toMatchObject({
      ...{ warnings: [], quirks: [] },
      origin: { simulated: [], invented: [] },
    });
  });
});

describe('the plan of a flow ladder', () => {
  it('says what to expect, and names the trials that it is drawn from with their figures', async () => {
    const { status, out, err } = await plan(sampleRegistry().cwd, ...pairing);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^Commanded flow \d+–\d+ mm³\/s in \d+ rows, each read twice\.\n\n/);
    expect(out).toMatch(/\nFlow ladder of oakhollow\/daisy-pla on plumstead\/wren, nozzle hs-0\.6, 230 °C\n/);
    expect(out).toMatch(/\d+(\.\d+)? mm³\/s, probably/);
    expect(unwrapped(out)).toMatch(
      /trial wren-daisy-pla-215, the same pairing .*: 2\d(\.\d)? mm³\/s \(95 % interval/,
    );
    expect(out).toMatch(/32 mm³\/s claimed for hs-0\.6 at 230 °C/);
    expect(out).toMatch(/the 50 W heater cannot melt more/);
    expect(out).toMatch(/the drive loses its grip on the filament near 60 mm\/s/);
  });

  it('says what to do next', async () => {
    const { out } = await plan(sampleRegistry().cwd, ...pairing);
    expect(unwrapped(out)).toContain(
      'Next: the same command with `--out FOLDER` writes the empty trial, the sheet for its readings and this plan to print; once they are in the registry, `meltbounds reduce wren-daisy-pla-230-2` gives the result.',
    );
  });

  it('gives feeds in both units that benches type', async () => {
    const { out } = await plan(sampleRegistry().cwd, ...pairing);
    const [, flow, perSecond, perMinute] = /\n +(20) +\d+ +([\d.]+) +(\d+) /.exec(out)?.map(Number) ?? [];
    expect(flow).toBe(20);
    expect(perSecond).toBeCloseTo((4 * 20) / (Math.PI * 1.75 ** 2), 2);
    expect(perMinute).toBeCloseTo((perSecond ?? 0) * 60, -1);
  });

  it('warns of protective stops, says how to record them, and carries the cautions', async () => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', '\nnotice:', '\nsensors: [clogDetection]\nnotice:');
    const { out } = await plan(registry.cwd, ...pairing);
    expect(unwrapped(out)).toContain(
      'may take a hot end that delivers too little for a clog and stop the ladder',
    );
    expect(out).toContain('event: halted, commandedFlow');
    expect(unwrapped(out)).toContain('never a licence to exceed a limit of the maker');
  });

  it('shows how to record a stop with a flow of this ladder', async () => {
    const { cwd } = sampleRegistry();
    const { out } = await plan(cwd, ...pairing);
    const halted = Number(/event: halted, commandedFlow: (\S+) mm3\/s, note: Clog/.exec(out)?.[1]);
    const sheet = (await plan(cwd, ...pairing, '--format', 'csv')).out;
    expect(sheet.split('\n').map((row) => Number(row.split(',')[0]))).toContain(halted);
  });

  it('names the other temperatures that a series wants, and not its own', async () => {
    const { out } = await plan(sampleRegistry().cwd, ...pairing, '--temperature', '220 Cel');
    expect(unwrapped(out)).toMatch(/run the same ladder at (?!220\b|[\d, ]+, 220\b)[\d, ]+ °C too/);
  });

  it('stays within what filament, hot end and liner allow', async () => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', 'value: 290 Cel', 'value: 210 Cel');
    const { out } = await plan(registry.cwd, ...pairing, '--format', 'json');
    expect(JSON.parse(out).nozzleTemperature.value).toBeLessThanOrEqual(210);
    const asked = await plan(registry.cwd, ...pairing, '--temperature', '230 Cel');
    expect(asked.status).toBe(2);
    expect(asked.err).toMatch(
      /^230 °C is outside the range that the profiles allow, 200–210 °C: .* hot end "main" of plumstead\/wren\.\nAsk for a temperature inside it\.\n$/,
    );
  });

  it('feeds shorter pieces for a finer scale', async () => {
    const { cwd } = sampleRegistry();
    const lengthFor = async (resolution: string) => {
      const { out } = await plan(cwd, ...pairing, '--resolution', resolution, '--format', 'json');
      return JSON.parse(out).piece.feedLength.value;
    };
    expect(await lengthFor('0.01 g')).toBe(1100);
    expect(await lengthFor('0.001 g')).toBe(400);
  });

  it('is the same on every run', async () => {
    const { cwd } = sampleRegistry();
    expect(await plan(cwd, ...pairing)).toEqual(await plan(cwd, ...pairing));
  });
});

describe('what cannot be planned', () => {
  it.each([
    [['plumstead/wrem', 'oakhollow/daisy-pla'], 'Did you mean "plumstead/wren"?'],
    [['plumstead/wren', 'oakhollow/daisy-pls'], 'Did you mean "oakhollow/daisy-pla"?'],
    [[...pairing, '--nozzle', 'hs-0.5'], 'Did you mean "hs-0.4"?'],
    [[...pairing, '--method', 'flowLader'], 'Did you mean "flowLadder"?'],
    [[...pairing, '--resolution', '0.01'], '--resolution: '],
    [[...pairing, '--resolution', '0 g'], 'a scale steps by more than 0 g'],
    [[...pairing, '--temperature', '230 mm'], '--temperature: '],
  ])('%j ends with status 2 and says what would do', async (args, message) => {
    const { status, out, err } = await plan(sampleRegistry().cwd, ...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });
});

/** Mass that comes out of a hot end that lacks 5 % at a limit and never delivers more than a ceiling. */
function extruded(flow: number, length: number, limit: number, piece: number): string {
  const full = length * 2.40528 * 0.00124;
  const bend = 14;
  const ceiling = limit / (0.95 ** -bend - 1) ** (1 / bend);
  const delivered = (1 + (flow / ceiling) ** bend) ** (-1 / bend);
  const scatter = 1 + (piece % 2 === 0 ? 0.0004 : -0.0004);
  return (full * delivered * scatter).toFixed(2);
}

function filled(sheet: string, limit: number): string {
  const [header = '', ...rows] = sheet.trimEnd().split('\r\n');
  const complete = rows.map((row, index) => {
    const [flow = 0, length = 0] = row.split(',').map(Number);
    return `${row}${extruded(flow, length, limit, index)}`;
  });
  return [header, ...complete, ''].join('\r\n');
}

describe('the empty trial', () => {
  const path = (name: string) => `trials/2026/${name}`;
  const ask = [...pairing, '--temperature', '220 Cel'];

  it('lacks nothing but its readings', async () => {
    const registry = sampleRegistry();
    const { out } = await plan(registry.cwd, ...ask, '--out', 'profiles/trials/2026');
    expect(out.split('\n')).toEqual([
      join('profiles/trials/2026', `${id}.yaml`),
      join('profiles/trials/2026', `${id}.csv`),
      join('profiles/trials/2026', `${id}.md`),
      '',
    ]);
    const { findings } = await checked(registry.cwd);
    expect(findings.length).toBeGreaterThan(0);
    expect(new Set(findings.map(({ rule }) => rule))).toEqual(new Set(['evidence/unreducible']));
    expect(findings[0]?.message).toMatch(/has no value here/);
  });

  it.each([24, 25.5, 27])(
    'filled in is sound, and reduces to the limit that it was run at, %d mm3/s',
    async (limit) => {
      const registry = sampleRegistry();
      await plan(registry.cwd, ...ask, '--out', 'profiles/trials/2026');
      registry.write(path(`${id}.csv`), filled(registry.read(path(`${id}.csv`)), limit));
      expect((await checked(registry.cwd)).findings).toEqual([]);
      const { status, out } = await runCommand(registry.cwd, ['reduce', id, '--format', 'json']);
      expect(status).toBe(0);
      const { results } = JSON.parse(out);
      expect(results[0].censored).toBeNull();
      expect(Math.abs(results[0].value.value / limit - 1)).toBeLessThan(0.03);
    },
  );

  it('takes readings in its own rows too', async () => {
    const registry = sampleRegistry();
    const { out } = await plan(registry.cwd, ...ask, '--format', 'trial');
    registry.write(path(`${id}.yaml`), out);
    const empty = (await checked(registry.cwd)).findings;
    expect(new Set(empty.map(({ rule }) => rule))).toEqual(new Set(['evidence/unreducible']));
    let piece = 0;
    const complete = out.replace(/\[(\d+), (\d+), \]/g, (_, flow: string, length: string) => {
      piece += 1;
      return `[${flow}, ${length}, ${extruded(Number(flow), Number(length), 24, piece)}]`;
    });
    registry.write(path(`${id}.yaml`), complete);
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('takes a free id', async () => {
    const { out } = await plan(sampleRegistry().cwd, ...pairing, '--format', 'trial');
    expect(out).toContain('\nid: wren-daisy-pla-230-2\n');
  });
});

describe('the sheets', () => {
  it('print as Markdown with cells to fill in by hand', async () => {
    const { out } = await plan(sampleRegistry().cwd, ...pairing, '--format', 'markdown');
    expect(out).toMatch(/^# Flow ladder of /);
    expect(out).toMatch(/\| extruded mass, 1 \[g\] \| extruded mass, 2 \[g\] \| what was seen \|\n/);
    expect(out).toMatch(/\| +20 \| +1100 \| +8\.32 \| +499 \| [^\n]+\| {22}\| {22}\| {15}\|\n/);
  });

  it('are CSV that names its units, with empty cells for the masses', async () => {
    const { out } = await plan(sampleRegistry().cwd, ...pairing, '--format', 'csv');
    const [header, first] = out.split('\r\n');
    expect(header).toBe('commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]');
    expect(first).toMatch(/^\d+,1100,$/);
  });

  it('leave nothing behind where the plan fails', async () => {
    const registry = sampleRegistry();
    await plan(registry.cwd, 'plumstead/wrem', 'oakhollow/daisy-pla', '--out', 'sheets');
    expect(existsSync(join(registry.cwd, 'sheets'))).toBe(false);
  });

  it('never write over a sheet that may hold readings', async () => {
    const registry = sampleRegistry();
    const { out } = await plan(registry.cwd, ...pairing, '--out', 'sheets');
    const sheet = join(registry.cwd, out.split('\n')[1] ?? '');
    writeFileSync(sheet, 'filled in');
    const again = await plan(registry.cwd, ...pairing, '--out', 'sheets');
    expect(again.status).toBe(2);
    expect(again.err).toMatch(
      /^sheets already holds wren-daisy-pla-230-2\.yaml, .* nothing is written over\.\n/,
    );
    expect(readFileSync(sheet, 'utf8')).toBe('filled in');
  });

  it('go into the folder that --out names', async () => {
    const registry = sampleRegistry();
    const { out } = await plan(registry.cwd, ...pairing, '--out', 'sheets');
    for (const file of out.trimEnd().split('\n')) {
      expect(readFileSync(join(registry.cwd, file), 'utf8')).not.toBe('');
    }
  });
});
