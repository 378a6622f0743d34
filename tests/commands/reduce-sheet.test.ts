import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';

const sheetOptions = ['--method', 'flowLadder', '--diameter', '1.75 mm', '--density', '1.24 g/cm3'];

const sheet = `commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]
10,400,1.195
14,400,1.196
18,400,1.194
22,400,1.173
26,400,1.090
30,400,0.995
`;

/** A folder with a bench sheet in it. */
function withSheet(text = sheet): string {
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, 'ladder.csv'), text);
  return cwd;
}

function reduce(cwd: string, ...args: string[]) {
  return runCommand(cwd, ['reduce', ...args]);
}

function reduceSheet(cwd: string, ...more: string[]) {
  return reduce(cwd, 'ladder.csv', ...sheetOptions, ...more);
}

describe('a bare CSV sheet', () => {
  it('is reduced with the options that a trial would hold', async () => {
    const { status, out, err } = await reduceSheet(withSheet());
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(
      /^Melt flow limit 2[\d.]+ mm³\/s, 95 % interval [\d.]+–[\d.]+ mm³\/s\.\n\nladder\.csv: flow ladder\n/,
    );
    expect(out).toContain(
      '\nsheet    UTF-8, commas between the cells, decimal points, 6 rows\ncolumns  commandedFlow [mm³/s], feedLength [mm], extrudedMass [g]\n',
    );
  });

  it('may stand anywhere, whatever its ending', async () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'LADDER.CSV'), sheet);
    writeFileSync(join(cwd, 'ladder.txt'), sheet);
    expect((await reduce(cwd, 'LADDER.CSV', ...sheetOptions)).status).toBe(0);
    expect((await reduce(cwd, './ladder.txt', ...sheetOptions)).status).toBe(0);
  });

  it('gives the same figures in other units', async () => {
    const inches = sheet.replace('feedLength [mm]', 'feedLength [m]').replaceAll(',400,', ',0.4,');
    const [metric, other] = [await reduceSheet(withSheet(), '--format', 'json'), withSheet(inches)];
    const density = ['--density', '1240 kg/m3'];
    const again = await reduce(
      other,
      'ladder.csv',
      ...sheetOptions.slice(0, 4),
      ...density,
      '--format',
      'json',
    );
    expect(JSON.parse(again.out).results[0].value.value).toBeCloseTo(
      JSON.parse(metric.out).results[0].value.value,
      6,
    );
  });

  it('gives a lower limit when less may be missing', async () => {
    const value = async (tolerance: string) =>
      JSON.parse((await reduceSheet(withSheet(), '--tolerance', tolerance, '--format', 'json')).out)
        .results[0].value.value;
    expect(await value('3 %')).toBeLessThan(await value('10 %'));
  });

  it('that ended early gives a lower bound without an interval', async () => {
    const early = `${sheet.split('\n').slice(0, 4).join('\n')}\n16,400,1.195\n`;
    const { out } = await reduceSheet(withSheet(early), '--format', 'json');
    expect(JSON.parse(out).results).toEqual([
      {
        quantity: 'meltFlow',
        value: { value: expect.any(Number), unit: 'mm3/s' },
        interval: { low: null, high: null, unit: 'mm3/s', coverage: 0.95 },
        censored: 'above',
      },
      {
        quantity: 'startDeficit',
        value: { value: expect.any(Number), unit: '1' },
        interval: { low: expect.any(Number), high: expect.any(Number), unit: '1', coverage: 0.95 },
        censored: null,
      },
    ]);
  });

  it('leaves out what came at and after a halt', async () => {
    const { out } = await reduceSheet(withSheet(), '--halted', '30 mm3/s');
    expect(out).toContain('The run was halted at 30 mm³/s');
  });

  it.each<[string, string[], string, string]>([
    ['a diameter', ['--method', 'flowLadder'], 'A bare sheet needs --diameter.', '--diameter "1.75 mm"'],
    [
      'a density',
      ['--method', 'flowLadder', '--diameter', '1.75 mm'],
      'A bare sheet needs --density.',
      '--density "1.24 g/cm3"',
    ],
  ])('cannot be reduced without %s', async (_, options, reason, help) => {
    const { status, out, err } = await reduce(withSheet(), 'ladder.csv', ...options);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(reason);
    expect(err).toContain(help);
  });

  it.each([
    ['--diameter', '1.75', 'has no unit'],
    ['--diameter', '1.75 g', 'mass'],
    ['--density', '1.24 g', 'mass'],
    ['--density', '1,24 g/cm3', 'comma'],
    ['--tolerance', '5 mm', 'length'],
    ['--resolution', '0.01', 'has no unit'],
    ['--halted', '66 mm/s', 'speed'],
  ])('cannot be reduced with %s %j', async (option, value, reason) => {
    const { status, out, err } = await reduceSheet(withSheet(), option, value);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(new RegExp(`^${option}: .*${reason}`));
  });

  it('cannot be reduced by an unknown method', async () => {
    const { status, err } = await reduce(withSheet(), 'ladder.csv', '--method', 'flowLader');
    expect(status).toBe(2);
    expect(err).toContain('Allowed choices are flowLadder');
  });

  it.each(['0 %', '-5 %', '60 %'])('with a tolerance of %s cannot be reduced', async (tolerance) => {
    const { status, out, err } = await reduceSheet(withSheet(), `--tolerance=${tolerance}`);
    expect({ status, out }).toEqual({ status: 1, out: '' });
    expect(err).toContain('acceptedDeficit');
  });

  it('that is not there cannot be reduced', async () => {
    const { status, err } = await reduce(temporaryFolder(), 'lader.csv', ...sheetOptions);
    expect(status).toBe(2);
    expect(err).toContain('lader.csv cannot be read (ENOENT).');
  });

  it('that is no text cannot be reduced', async () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'ladder.csv'), Uint8Array.of(0x31, 0xff, 0xfe, 0x00));
    const { status, err } = await reduceSheet(cwd);
    expect(status).toBe(1);
    expect(err).toContain('ladder.csv: this is a file of bytes that are no text, not a bench sheet');
  });

  it('that is far too large is not read', async () => {
    const { status, err } = await reduceSheet(withSheet(`${sheet}${' '.repeat(4_100_000)}`));
    expect(status).toBe(2);
    expect(err).toContain('too large');
  });

  it.each([
    ['22,400,1.173', '22,400,n/a', 5, 'extrudedMass `n/a` is not a number'],
    ['22,400,1.173', '22,400,', 5, 'extrudedMass has no value here'],
    ['22,400,1.173', '22,400', 5, 'the row has 2 cells, the header 3'],
    ['22,400,1.173', '22,400,1.913', 5, '1.913 g at 22 mm³/s is off by a factor of'],
    [
      'extrudedMass [g]',
      'extrudedMass',
      1,
      'the header `extrudedMass` is not a name with its unit in brackets',
    ],
    ['extrudedMass [g]', 'extrudedMass [mm]', 1, 'the column `extrudedMass`'],
    ['extrudedMass [g]', 'weight [g]', 1, 'there is no column `weight` in this method'],
  ])('with %j written as %j ends with 1 and names line %i', async (from, to, line, message) => {
    const { status, out, err } = await reduceSheet(withSheet(sheet.replace(from, to)));
    expect({ status, out }).toEqual({ status: 1, out: '' });
    expect(err).toContain(`ladder.csv:${line}: ${message}`);
  });

  it('has no filament to adopt its limit for', async () => {
    const { status, out, err } = await reduceSheet(withSheet(), '--adopt');
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('A bare sheet names no filament');
  });
});
