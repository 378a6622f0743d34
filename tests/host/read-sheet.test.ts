import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readSheetTable } from '../../src/bench/sheet/bench-sheet.ts';
import { readSheetFile } from '../../src/host/read-sheet.ts';
import { temporaryFolder } from '../sample-registry.ts';
import { sheetXml, workbookOf, workbookOfParts } from './workbook-file.ts';

const plan = {
  columns: { commandedFlow: 'volumeFlow', feedLength: 'length', extrudedMass: 'mass' },
} as const;

const rows = [
  ['flow (mm3/s)', 'feed length mm', 'mass [g]', 'note'],
  [20, 500, 1.49, 'first'],
  [22.5, 500, { formula: '2*0.7445', value: 1.489 }, null],
] as const;

async function read(bytes: Uint8Array, sheet?: string) {
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, 'ladder.xlsx'), bytes);
  const file = await readSheetFile('ladder.xlsx', cwd, sheet);
  if (!file.ok) throw new Error(file.error.message);
  return file.value;
}

describe('a workbook', () => {
  test('is read with the numbers that it holds', async () => {
    const file = await read(workbookOf({ Tuesday: rows }));
    expect(file).toMatchObject({ ok: true, value: { encoding: null, text: null } });
    const sheet = file.ok ? readSheetTable(file.value.table, plan) : file;
    expect(sheet).toMatchObject({
      ok: true,
      value: {
        observations: {
          columns: { commandedFlow: [20, 22.5], feedLength: [500, 500], extrudedMass: [1.49, 1.489] },
          rows: [2, 3],
        },
        separator: null,
        notes: [{ row: 2, text: 'first' }],
      },
    });
  });

  test('says that formulas stand for their saved values', async () => {
    const remarks = ['formulas read as their saved values'];
    expect(await read(workbookOf({ Tuesday: rows }))).toMatchObject({ value: { remarks } });
    expect(await read(workbookOf({ Tuesday: rows.slice(0, 2) }))).toMatchObject({ value: { remarks: [] } });
  });

  test('of several sheets is read by the one with rows, or the one that is named', async () => {
    const two = workbookOf({ Empty: [], Tuesday: rows });
    expect(await read(two)).toMatchObject({
      value: { remarks: [expect.stringContaining('"Tuesday" of 2'), expect.anything()] },
    });
    const both = workbookOf({ Monday: rows.slice(0, 2), Tuesday: rows });
    expect(await read(both)).toMatchObject({
      ok: false,
      error: [{ code: 'otherSheet', message: expect.stringContaining('"Monday", "Tuesday"') }],
    });
    expect(await read(both, 'Monday')).toMatchObject({ value: { table: { rows: [{ row: 2 }] } } });
    expect(await read(both, 'Tusday')).toMatchObject({ error: [{ help: 'did you mean "Tuesday"?' }] });
  });

  test('keeps the rows where they stand', async () => {
    const [head = [], ...others] = rows;
    const file = await read(workbookOf({ Tuesday: [[], head, [], ...others] }));
    expect(file.ok && file.value.table.rows.map(({ row }) => row)).toEqual([4, 5]);
  });

  test('with text in a column of numbers is refused at its row', async () => {
    const file = await read(workbookOf({ Tuesday: [...rows, [24, 500, 'broke off', null]] }));
    const sheet = file.ok ? readSheetTable(file.value.table, plan) : file;
    expect(sheet).toMatchObject({ ok: false, error: [{ code: 'notANumber', found: 'broke off', row: 4 }] });
  });
});

describe('a hostile workbook', () => {
  test.each([
    ['an empty one', workbookOf({ Tuesday: [] }), 'emptySheet'],
    ['a zip archive of something else', zipSync({ 'a.txt': strToU8('a') }), 'otherKind'],
    ['a broken archive', workbookOf({ Tuesday: rows }).slice(0, 300), 'otherKind'],
    [
      'broken mark-up',
      workbookOfParts(['Tuesday'], ['<worksheet><sheetData><row r="1"><c r="A1"><v>1']),
      'otherKind',
    ],
    ['a sheet that is not there', workbookOfParts(['Tuesday', 'Monday'], [sheetXml('')]), 'otherKind'],
    [
      'a bomb',
      zipSync({ 'xl/workbook.xml': strToU8('<a/>'), 'xl/worksheets/sheet1.xml': new Uint8Array(17_000_000) }),
      'sheetTooLarge',
    ],
    [
      'many files',
      zipSync(Object.fromEntries(Array.from({ length: 501 }, (_, index) => [`${index}.xml`, strToU8('a')]))),
      'sheetTooLarge',
    ],
    [
      'a cell far below',
      workbookOfParts(['Tuesday'], [sheetXml('<row r="1048576"><c r="A1048576"><v>1</v></c></row>')]),
      'sheetTooLarge',
    ],
    [
      'a cell far to the right',
      workbookOfParts(['Tuesday'], [sheetXml(`<row r='1'><c t="n"r='XFD1'><v>1</v></c></row>`)]),
      'sheetTooLarge',
    ],
    [
      'a cell with a hidden place',
      workbookOfParts(['Tuesday'], [sheetXml('<row r="1"><c r="&#88;FD1"><v>1</v></c></row>')]),
      'sheetTooLarge',
    ],
    ['rows without an end', workbookOfParts(['Tuesday'], [sheetXml('<row/>'.repeat(5001))]), 'sheetTooLarge'],
  ])('%s is refused', async (_, bytes, code) => {
    expect(await read(bytes)).toMatchObject({ ok: false, error: [{ code }] });
  });

  test('whose size is a lie takes no more room than it claims', async () => {
    const bytes = workbookOfParts(['Tuesday'], [sheetXml(' '.repeat(1_000_000))]);
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    // The sizes in the central directory, which readers go by.
    for (let at = 0; at < bytes.length - 4; at += 1) {
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 10, true);
    }
    expect(await read(bytes)).toMatchObject({ ok: false });
  });
});

test.each([
  ['%PDF-1.7', 'a PDF document'],
  ['\x89PNG\r\n', 'a PNG picture'],
  ['\xff\xd8\xff\xe0', 'a JPEG picture'],
  ['\xd0\xcf\x11\xe0', 'an office document of the old binary form (.xls, .doc)'],
  ['\x1f\x8b\x08', 'a gzip archive'],
  ['\x00\xff\x01', 'a file of bytes that are no text'],
])('%j says what it is', async (beginning, found) => {
  expect(await read(Buffer.from(beginning, 'latin1'))).toMatchObject({
    error: [{ code: 'otherKind', found }],
  });
});

test('a folder, and a file that is not there, say so', async () => {
  const cwd = temporaryFolder();
  mkdirSync(join(cwd, 'a.csv'));
  const messageOf = async (path: string) => {
    const file = await readSheetFile(path, cwd);
    return file.ok ? null : file.error.message;
  };
  expect(await messageOf('a.csv')).toBe('a.csv is a folder, not a bench sheet');
  expect(await messageOf('b.csv')).toBe('b.csv cannot be read (ENOENT)');
});
