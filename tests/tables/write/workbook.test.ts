import { unzipSync } from 'fflate';
import readSheets from 'read-excel-file/universal';
import { afterEach, describe, expect, it } from 'vitest';
import { csvHeader, csvRows } from '../../../src/tables/write/table-as-csv.ts';
import { formatTableAsWorkbook } from '../../../src/tables/write/table-as-workbook.ts';
import { sha256Of } from '../../../src/text/sha256.ts';
import { formatWorkbook } from '../../../src/text/workbook.ts';
import { runCommand } from '../../run-command.ts';
import { sampleRegistry } from '../../sample-registry.ts';
import { tableWith } from '../derive/pairing-with.ts';

const table = tableWith();
const made = formatTableAsWorkbook(table);
const textOf = (bytes: Uint8Array, name: string) =>
  Buffer.from(unzipSync(bytes)[name] ?? []).toString('utf8');

async function sheetsOf(bytes: Uint8Array) {
  return readSheets(new Blob([Uint8Array.from(bytes)]));
}

const zone = process.env.TZ;
afterEach(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

describe('the workbook of a table', () => {
  it('holds what the CSV file holds, numbers as numbers, as an independent reader sees it', async () => {
    const [speeds] = await sheetsOf(made);
    const rows = [csvHeader, ...csvRows(table)].map((row) => row.map((cell) => (cell === '' ? null : cell)));
    expect(speeds?.data).toEqual(rows);
    expect(speeds?.data.flat().filter((cell) => typeof cell === 'number').length).toBeGreaterThan(100);
  });

  it('says what is simulated in the name of its first sheet, and why in the last one', async () => {
    const sheets = await sheetsOf(made);
    expect(sheets.map(({ sheet }) => sheet)).toEqual(['Speeds (simulated)', 'Conditions', 'About']);
    expect(JSON.stringify(sheets.at(-1)?.data)).toContain('starting points for a supervised trial');
  });

  it('keeps the head in sight', () => {
    for (const number of [1, 2, 3])
      expect(textOf(made, `xl/worksheets/sheet${number}.xml`)).toContain('ySplit="1" topLeftCell="A2"');
  });

  it.each(['Pacific/Kiritimati', 'America/St_Johns', 'UTC'])('has the same bytes in %s', (place) => {
    process.env.TZ = place;
    expect(Buffer.from(formatTableAsWorkbook(table)).equals(made)).toBe(true);
  });
});

describe('a workbook', () => {
  it('shows what looks like a formula, mark-up or a code of a terminal as text', async () => {
    const texts = ['=1+1', '@x', '<c t="n"/>&amp;', 'a\nb', ' spaces ', 'a\u0000b'];
    const [sheet] = await sheetsOf(
      formatWorkbook([{ name: 'A & B', head: ['text'], rows: texts.map((text) => [text]) }]),
    );
    expect(sheet?.sheet).toBe('A & B');
    expect(sheet?.data.flat().slice(1, 5)).toEqual(texts.slice(0, 4));
    expect(sheet?.data.flat().at(-1)).toBe('a\\u{0}b');
  });

  it('has columns beyond Z', async () => {
    const head = Array.from({ length: 60 }, (_, index) => `c${index}`);
    const [sheet] = await sheetsOf(
      formatWorkbook([{ name: 'A', head, rows: [head.map((_, index) => index)] }]),
    );
    expect(sheet?.data).toEqual([head, head.map((_, index) => index)]);
  });
});

describe('tables --format xlsx', () => {
  const args = ['tables', 'plumstead/wren', 'oakhollow/daisy-pla', '--format', 'xlsx'];

  it('prints the bytes of the workbook, and those of all temperatures', async () => {
    const { cwd } = sampleRegistry();
    const { status, out } = await runCommand(cwd, args);
    expect(status).toBe(0);
    const again = await runCommand(cwd, args);
    expect(sha256Of(out)).toBe(sha256Of(again.out));
    const family = await runCommand(cwd, [...args, '--all-temperatures']);
    const [speeds] = await sheetsOf(Buffer.from(family.out, 'latin1'));
    expect(speeds?.data[0]?.[0]).toBe('tableTemperature [Cel]');
    expect(new Set(speeds?.data.slice(1).map(([temperature]) => temperature))).toEqual(new Set([215, 230]));
  });

  it('sends no bytes to a terminal', async () => {
    const { status, out, err } = await runCommand(sampleRegistry().cwd, args, { terminalColumns: 80 });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('> table.xlsx');
  });
});
