import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand, unwrapped } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];
const header = 'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]';
/** Full delivery of a metre weighs 2.98 g; 5 % is missing near 25.5 mm3/s. */
const pieces = ['12,1000,2.983', '19,1000,2.978', '23,1000,2.963', '28,1000,2.651'];

function begun(rows: readonly string[], head = header) {
  const registry = sampleRegistry();
  writeFileSync(join(registry.cwd, 'ladder.csv'), `${[head, ...rows].join('\n')}\n`);
  return registry;
}

function continued(cwd: string, ...args: string[]) {
  return runCommand(cwd, ['plan', ...pairing, '--after', ...args]);
}

describe('the next piece of a ladder', () => {
  it('is fed well below the limit where nothing has been weighed yet', async () => {
    const { status, out, err } = await continued(begun([]).cwd, 'ladder.csv');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^Feed \d+ mm³\/s first\.\n/);
    expect(unwrapped(out)).toContain('no piece has been weighed yet');
    expect(unwrapped(out)).toContain('never a licence to exceed a limit of the maker');
  });

  it('is told with its reason, the width now and then, and how many more it likely takes', async () => {
    const { out } = await continued(begun(pieces).cwd, 'ladder.csv', '--width', '3 %');
    const text = unwrapped(out);
    expect(text).toMatch(
      /^Feed 2\d(\.\d)? mm³\/s next: the 95 % interval is \d+(\.\d)? % wide and would become about \d\.?\d* %\./,
    );
    expect(text).toMatch(/4 pieces at 4 flows, 12–28 mm³\/s/);
    expect(text).toContain('asked for: an interval 3 % wide (as asked)');
    expect(text).toMatch(/that likely takes \d+ more pieces?, this one among them/);
    expect(text).toContain('of all flows a piece there is expected to narrow the interval most');
    expect(text).toContain('purge slowly until the melt comes out full');
    expect(out.split('\n').every((line) => line.length <= 80)).toBe(true);
  });

  it('stops at the width that the policy asks for, and says whose it is', async () => {
    const registry = begun([...pieces, '25.4,1000,2.837', '25.4,1000,2.84', '12,1000,2.98']);
    registry.edit('policies/house.yaml', 'acceptedDeficit: 5 %', 'acceptedDeficit: 5 %\nintervalWidth: 15 %');
    const { status, out } = await continued(registry.cwd, 'ladder.csv');
    expect(status).toBe(0);
    expect(unwrapped(out)).toMatch(/^Stop: the 95 % interval is \d\.?\d* % wide, and 15 % was asked for\./);
    expect(unwrapped(out)).toContain('(policy house)');
    expect(out).not.toContain('Read extruded mass');
  });

  it('leaves out rows whose mass is still to be written, as the sheet of a plan has them', async () => {
    const { cwd } = begun([...pieces, '30,1000,', '32,1000,']);
    const { out } = await continued(cwd, 'ladder.csv');
    expect(unwrapped(out)).toContain('4 pieces at 4 flows');
  });

  it.each(['; and decimal commas', 'workbook words'])('reads %s as reduce does', async (form) => {
    const comma = form.startsWith(';');
    const rows = comma ? pieces.map((row) => row.replaceAll(',', ';').replaceAll('.', ',')) : pieces;
    const head = comma ? header.replaceAll(',', ';') : 'flow (mm3/s),length mm,mass (g)';
    const { status, out } = await continued(begun(rows, head).cwd, 'ladder.csv');
    expect(status).toBe(0);
    expect(unwrapped(out)).toContain('4 pieces at 4 flows, 12–28 mm³/s');
  });

  it('never goes up to a halt', async () => {
    const { out } = await continued(begun(pieces.slice(0, 3)).cwd, 'ladder.csv', '--halted', '27 mm3/s');
    const text = unwrapped(out);
    expect(Number(/^Feed ([\d.]+) /.exec(text)?.[1])).toBeLessThan(27);
    expect(text).toContain('the run stopped at 27 mm³/s: pieces from there on do not count');
  });

  it('is in JSON and CSV as a plan of one row, and in Markdown', async () => {
    const { cwd } = begun(pieces);
    const json = JSON.parse((await continued(cwd, 'ladder.csv', '--format', 'json')).out);
    expect(json).toMatchObject({ format: 'meltbounds-plan/1', repeats: 1 });
    expect(json.nextPiece).toMatchObject({ step: 'feed', reason: 'onset', piecesSoFar: 4 });
    expect(json.readings).toEqual([[json.nextPiece.flow.value, 1000, null]]);
    const csv = (await continued(cwd, 'ladder.csv', '--format', 'csv')).out;
    expect(csv.trimEnd().split(/\r?\n/)).toEqual([header, `${json.nextPiece.flow.value},1000,`]);
    expect((await continued(cwd, 'ladder.csv', '--format', 'markdown')).out).toContain(
      '# Next piece of the flow ladder',
    );
  });
});

describe('a trial that has begun', () => {
  const trial = 'wren-daisy-pla-215';

  it('gives its temperature, nozzle and deficit, and does not predict itself', async () => {
    const { status, out } = await continued(sampleRegistry().cwd, trial, '--width', '30 %');
    expect(status).toBe(0);
    expect(unwrapped(out)).toMatch(/^Stop: .*nozzle hs-0\.6, 215 °C/s);
    expect(out).toContain(trial);
  });

  it('is named by its file too, inside of the registry or not', async () => {
    const registry = sampleRegistry();
    const path = `trials/2026/${trial}.yaml`;
    const byId = await continued(registry.cwd, trial, '--width', '30 %');
    const byPath = await continued(registry.cwd, `profiles/${path}`, '--width', '30 %');
    expect(byPath).toEqual(byId);
    const text = registry.read(path).replace(`id: ${trial}`, 'id: wren-daisy-pla-next');
    writeFileSync(join(registry.cwd, 'wren-daisy-pla-next.yaml'), text);
    const loose = await continued(registry.cwd, 'wren-daisy-pla-next.yaml', '--width', '30 %');
    expect(loose.err).toBe('');
    expect(unwrapped(loose.out)).toMatch(/^Stop: /);
  });

  it('may have no piece yet, as `plan --out` writes it', async () => {
    const { cwd } = sampleRegistry();
    const { out: written } = await runCommand(cwd, ['plan', ...pairing, '--out', 'bench']);
    const [file = ''] = written.split('\n').filter((path) => path.endsWith('.yaml'));
    const { status, out } = await continued(cwd, file);
    expect(status).toBe(0);
    expect(out).toMatch(/^Feed \d+ mm³\/s first\.\n/);
  });

  it.each([
    [['wren-clover-petg-245'], 'was fed with the filament oakhollow/clover-petg, not oakhollow/daisy-pla'],
    [[trial, '--nozzle', 'hs-0.4'], 'was fed with the nozzle hs-0.6, not hs-0.4'],
    [
      [trial, '--temperature', '230 Cel'],
      'is fed at 215 °C, not at 230 °C: pieces of two temperatures make no ladder',
    ],
    [[trial, '--halted', '30 mm3/s'], '--halted belongs to a bare sheet'],
  ])('that is %s is refused', async (args, message) => {
    const { status, out, err } = await continued(sampleRegistry().cwd, ...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });
});

describe('what cannot be continued is refused:', () => {
  it('the sheet of another method', async () => {
    const { cwd } = begun(
      ['1,1.75,1.74', '2,1.74,1.75'],
      'position [mm],firstDiameter [mm],secondDiameter [mm]',
    );
    const { status, err } = await continued(cwd, 'ladder.csv');
    expect(status).toBe(2);
    expect(err).toContain(
      'ladder.csv is the sheet of a diameterSurvey, and only a flowLadder is fed piece by piece',
    );
  });

  it('a reading that is none, with its line', async () => {
    const { status, err } = await continued(begun([...pieces, '25,1000,abc']).cwd, 'ladder.csv');
    expect(status).toBe(2);
    expect(err).toContain('ladder.csv:6: extrudedMass `abc` is not a number');
  });

  it.each([
    [['--width', '0 %'], 'an interval is wider than nothing'],
    [['--width', '3 mm'], '--width: '],
    [['--policy', 'hause'], 'house'],
    [['--method', 'dryingCurve'], '--after continues a flowLadder, not a dryingCurve'],
    [['--out', 'bench'], '--after prints one piece and writes no files'],
    [['--format', 'trial'], 'and no new trial'],
  ])('%s', async (args, message) => {
    const { status, err } = await continued(begun(pieces).cwd, 'ladder.csv', ...args);
    expect(status).toBe(2);
    expect(err).toContain(message);
  });

  it('what belongs to --after without it', async () => {
    const { status, err } = await runCommand(sampleRegistry().cwd, ['plan', ...pairing, '--width', '5 %']);
    expect(status).toBe(2);
    expect(err).toContain('--width belongs to --after');
  });

  it('a file that is not there, or no trial', async () => {
    const { cwd } = sampleRegistry();
    expect((await continued(cwd, 'gone.csv')).status).toBe(2);
    const { status, err } = await continued(cwd, 'profiles/policies/house.yaml');
    expect(status).toBe(2);
    expect(err).toContain('is no trial that can be read');
  });
});
