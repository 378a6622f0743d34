import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { workbookOf } from '../host/workbook-file.ts';
import { runCommand, unwrapped } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const facts = ['--diameter', '1.75 mm', '--density', '1.24 g/cm3'];

const readings = [
  [10, 400, 1.195],
  [14, 400, 1.196],
  [18, 400, 1.194],
  [22, 400, 1.173],
  [26, 400, 1.09],
  [30, 400, 0.995],
];
const headings = ['flow mm3/s', 'Feed length (mm)', 'extruded mass [g]'];
const plain = `commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\n${readings.map((row) => `${row.join(',')}\n`).join('')}`;
const german = `${headings.join(';')};Note\n${readings.map((row) => `${row.join(';').replaceAll('.', ',')};\n`).join('')}`;

function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const cwd = temporaryFolder();
  for (const [name, content] of Object.entries(files)) writeFileSync(join(cwd, name), content);
  return cwd;
}

describe('the same readings', () => {
  it.each<[string, string, string | Uint8Array]>([
    ['with semicolons and decimal commas', 'ladder.csv', german],
    ['as UTF-16', 'ladder.txt', Buffer.from(`\uFEFFsep=;\r\n${german}`, 'utf16le')],
    [
      'as Latin-1',
      'ladder.csv',
      Buffer.from(german.replace(';\n', ';größer\n').replace('mm3', 'mm³'), 'latin1'),
    ],
    ['between tabulators', 'ladder.tsv', german.replaceAll(';', '\t')],
    ['in a workbook', 'ladder.xlsx', workbookOf({ Tuesday: [headings, ...readings] })],
  ])('%s give the same result', async (_, name, content) => {
    const cwd = folderWith({ 'plain.csv': plain, [name]: content });
    const reduce = (file: string) => runCommand(cwd, ['reduce', file, ...facts, '--format', 'json']);
    const { status, out, err } = await reduce(name);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const { sheet, ...found } = JSON.parse(out);
    const { sheet: plainly, ...expected } = JSON.parse((await reduce('plain.csv')).out);
    expect(found).toEqual(expected);
    const columns = ({ columns }: { columns: { name: string | null }[] }) =>
      columns.flatMap(({ name }) => name ?? []);
    expect(columns(sheet)).toEqual(columns(plainly));
  });
});

describe('reduce', () => {
  it('says once how it has understood a sheet, and shows its notes', async () => {
    const cwd = folderWith({
      'ladder.csv': Buffer.from(german.replace(';\n', ';größer\u001b[1m\n'), 'latin1'),
    });
    const { status, err } = await runCommand(cwd, ['reduce', 'ladder.csv', ...facts]);
    expect(status).toBe(1);
    expect(err).toContain('bytes that are no text');
    writeFileSync(join(cwd, 'ladder.csv'), Buffer.from(german.replace('995;\n', '995;größer\n'), 'latin1'));
    const out = unwrapped((await runCommand(cwd, ['reduce', 'ladder.csv', ...facts])).out);
    expect(out).toContain('sheet Latin-1, semicolons between the cells, decimal commas, 6 rows');
    expect(out).toContain('"Feed length (mm)" as feedLength [mm]');
    expect(out).toContain('notes line 7: größer');
  });

  it('names the methods that a sheet fits where there are several', async () => {
    const cwd = folderWith({ 'x.csv': 'time [h],mass [g]\n0,1010.2\n1,1008.1\n' });
    const { status, err } = await runCommand(cwd, ['reduce', 'x.csv', ...facts]);
    expect(status).toBe(2);
    expect(err).toBe(
      'The columns fit several methods: dryingCurve, referencePrint.\nName one with --method.\n',
    );
  });

  it('names the nearest method where none fits', async () => {
    const cwd = folderWith({ 'x.csv': plain.replace('feedLength', 'weight') });
    const { status, err } = await runCommand(cwd, ['reduce', 'x.csv', ...facts]);
    expect(status).toBe(1);
    expect(err).toContain('x.csv:1: no bench method has these columns; the nearest is flowLadder');
  });

  it('takes the decimal sign that is named, where the numbers leave it open', async () => {
    const open = german.replaceAll('0,995', '1,001').replaceAll('1,09;', '1,090;').replaceAll(';', '\t');
    const cwd = folderWith({ 'ladder.csv': open });
    const refused = await runCommand(cwd, ['reduce', 'ladder.csv', ...facts]);
    expect(refused.status).toBe(1);
    expect(refused.err).toContain('1.195 with a decimal comma or as 1195 with a decimal point');
    expect(refused.err).toContain('--decimal comma or --decimal point');
    const taken = await runCommand(cwd, ['reduce', 'ladder.csv', ...facts, '--decimal', 'comma']);
    expect({ status: taken.status, err: taken.err }).toEqual({ status: 0, err: '' });
  });

  it('asks for the sheet of a workbook with several', async () => {
    const cwd = folderWith({
      'l.xlsx': workbookOf({ Monday: [headings], Tuesday: [headings, ...readings] }),
    });
    const open = await runCommand(cwd, ['reduce', 'l.xlsx', ...facts]);
    expect(open).toMatchObject({
      status: 1,
      err: expect.stringContaining('"Monday", "Tuesday"; name the one'),
    });
    const { out } = await runCommand(cwd, ['reduce', 'l.xlsx', ...facts, '--sheet', 'Tuesday']);
    expect(unwrapped(out)).toContain('sheet workbook, sheet "Tuesday" of 2, 6 rows');
  });

  it.each([
    ['x.pdf', '%PDF-1.7', 1, 'x.pdf: this is a PDF document, not a bench sheet'],
    ['x.yaml', 'kind: trial\n', 1, 'x.yaml: this is a YAML file, not a bench sheet'],
    ['x.json', '{}', 1, 'x.json: this is a JSON file, not a bench sheet'],
    ['x.csv', '', 1, 'x.csv: the sheet is empty'],
    ['x.zip', 'PK\x05\x06', 1, 'x.zip: this is an empty zip archive, not a bench sheet'],
  ])('says what %s is', async (name, content, status, message) => {
    const outcome = await runCommand(folderWith({ [name]: content }), ['reduce', name, ...facts]);
    expect(outcome).toMatchObject({ status, out: '', err: expect.stringContaining(message) });
  });

  it('says that a folder is one, and what is in no registry and no file', async () => {
    const { cwd } = sampleRegistry();
    mkdirSync(join(cwd, 'sheets'));
    const folder = await runCommand(cwd, ['reduce', 'sheets']);
    expect(folder).toMatchObject({
      status: 2,
      err: 'sheets is a folder, not a bench sheet.\nName a file.\n',
    });
    const nothing = await runCommand(cwd, ['reduce', 'sheet']);
    expect(nothing.err).toContain('There is no trial "sheet" in the registry, and no file of that name');
  });

  it('takes no --decimal for a trial', async () => {
    const { status, err } = await runCommand(sampleRegistry().cwd, [
      ...['reduce', 'wren-daisy-pla-230', '--decimal', 'comma'],
    ]);
    expect(status).toBe(2);
    expect(err).toContain('--decimal and --sheet belong to a bare sheet');
  });
});

test('the sheet beside a trial may have another form, which is said', async () => {
  const registry = sampleRegistry();
  const path = 'trials/2026/wren-daisy-pla-230.csv';
  const reduce = async () => (await runCommand(registry.cwd, ['reduce', 'wren-daisy-pla-230'])).out;
  const before = await reduce();
  const text = registry.read(path).replaceAll(',', ';').replaceAll('.', ',');
  writeFileSync(registry.path(path), Buffer.from(`\uFEFF${text}`, 'utf16le'));
  const after = await reduce();
  expect(after).toContain('sheet    UTF-16, semicolons between the cells, decimal commas');
  expect(before.split('\n')[0]).toBe(after.split('\n')[0]);
});

describe('new trial --from', () => {
  it.each<[string, string | Uint8Array]>([
    ['german.csv', german],
    ['ladder.xlsx', workbookOf({ Tuesday: [headings, ...readings] })],
  ])('%s writes a plain sheet', async (name, content) => {
    const registry = sampleRegistry();
    writeFileSync(join(registry.cwd, name), content);
    const { status, err } = await runCommand(registry.cwd, ['new', 'trial', 'x', '--from', name]);
    expect(status).toBe(0);
    expect(err).toContain('columns: "flow mm3/s" as commandedFlow [mm³/s]');
    const written = readFileSync(registry.path('trials/2026/x.csv'), 'utf8').replaceAll('\r\n', '\n');
    expect(written.replaceAll(',note', '').replaceAll(/,$/gm, '')).toBe(plain);
  });

  it('takes a decimal sign, and writes a sheet that needs none', async () => {
    const registry = sampleRegistry();
    writeFileSync(
      join(registry.cwd, 'l.csv'),
      'flow mm3/s\tlength mm\tmass g\n10\t400\t1,195\n14\t400\t1,196\n',
    );
    const named = await runCommand(registry.cwd, [
      'new',
      'trial',
      'x',
      '--from',
      'l.csv',
      '--decimal',
      'comma',
    ]);
    expect(named.status).toBe(0);
    expect(registry.read('trials/2026/x.csv')).toContain('10,400,1.195\r\n');
  });
});
