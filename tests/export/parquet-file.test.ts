import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/export/column.ts';
import { day, figure, flag, quantity, whole, words } from '../../src/export/column.ts';
import { type ExportTable, rowOf } from '../../src/export/export-table.ts';
import { parquetFile, rowsPerGroup } from '../../src/export/parquet-file.ts';
import { temporaryFolder } from '../sample-registry.ts';
import { askFolder } from './exported.ts';

type Row = Readonly<Record<string, string | number | boolean | null>>;
const given = (key: string) => (row: Row) => row[key] ?? null;

const table: ExportTable<Row> = {
  ...{
    name: 'sample',
    title: 'Sample',
    description: 'A row of each kind.',
    primaryKey: ['id'],
    foreignKeys: [],
  },
  columns: [
    words('id', 'Text', given('id')),
    figure('value', 'Number', given('value')),
    whole('count', 'Whole number', given('count')),
    flag('holds', 'Whether', given('holds')),
    day('date', 'Day', given('date')),
  ],
};

/** The bytes of a file with these rows, and in how many pieces they came. */
function written(rows: Iterable<Row>): { readonly bytes: Buffer; readonly pieces: number } {
  const file = parquetFile(table, 'test version 1');
  const pieces: Uint8Array[] = [];
  for (const row of rows)
    pieces.push(...[file.add(rowOf(table, row).cells)].filter((piece) => piece !== null));
  pieces.push(file.end());
  return { bytes: Buffer.concat(pieces), pieces: pieces.length };
}

async function readBack(rows: readonly Row[]): Promise<readonly object[]> {
  const folder = temporaryFolder();
  const { bytes } = written(rows);
  writeFileSync(join(folder, 'sample.parquet'), bytes);
  const here = await askFolder(
    folder,
    "SELECT * REPLACE (strftime(date, '%Y-%m-%d') AS date) FROM 'sample.parquet'",
  );
  const { buffer, byteOffset, byteLength } = bytes;
  const there = await parquetReadObjects({
    file: buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer,
  });
  const days = there.map(({ date, ...rest }) => ({
    ...rest,
    date: date?.toISOString().slice(0, 10) ?? null,
  }));
  expect(days).toEqual(here);
  return here;
}

const empty: Readonly<Record<string, Cell>> = { id: null, value: null, count: null, holds: null, date: null };

describe('a Parquet file', () => {
  it('gives back what was put in, in both readers', async () => {
    const rows = [
      { id: 'π, "quoted"\n\u0000', value: -1.5e-7, count: 3, holds: true, date: '2026-02-28' },
      { id: ' ', value: 0, count: -2, holds: false, date: '1969-12-31' },
      empty,
    ];
    expect(await readBack(rows)).toEqual(rows);
  });

  it.each([
    ['a number that is none', { value: Number.NaN }, 'value', null],
    ['a number without end', { value: Number.POSITIVE_INFINITY }, 'value', null],
    ['a negative zero', { value: -0 }, 'value', 0],
    ['the last digits of binary fractions', { value: 0.1 + 0.2 }, 'value', 0.3],
    ['an empty text', { id: '' }, 'id', null],
    ['a day that no calendar has', { date: '2026-02-30' }, 'date', null],
  ])('has %s put right', async (_, cells, column, expected) => {
    expect(await readBack([{ ...empty, ...cells }])).toEqual([{ ...empty, [column]: expected }]);
  });

  it('is written group by group, and holds every row', { tags: 'long' }, async () => {
    const count = 2 * rowsPerGroup + 1;
    const rows = Array.from({ length: count }, (_, index) => ({
      ...empty,
      id: `row ${index}`,
      count: index,
    }));
    const { bytes, pieces } = written(rows);
    expect(pieces).toBe(3);
    const { buffer, byteOffset, byteLength } = bytes;
    const { row_groups } = parquetMetadata(buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer);
    expect(row_groups.map(({ num_rows }) => num_rows)).toEqual([
      BigInt(rowsPerGroup),
      BigInt(rowsPerGroup),
      1n,
    ]);
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'sample.parquet'), bytes);
    const sums = "SELECT count(*) AS n, sum(count) AS total, count(DISTINCT id) AS ids FROM 'sample.parquet'";
    const total = BigInt(((count - 1) * count) / 2);
    expect(await askFolder(folder, sums)).toEqual([{ n: BigInt(count), total, ids: BigInt(count) }]);
  });
});

it('a quantity has its unit in its name and its UCUM code beside it', () => {
  const columns = [
    quantity('extrudedMass', 'mass', 'mass', () => 1),
    quantity('commandedFlow', 'volumeFlow', 'flow', () => 1),
    quantity('fan', 'ratio', 'fan', () => 1),
    quantity('grade', 'count', 'grade', () => 1),
    quantity('soundLevel', 'soundLevel', 'level', () => 1),
  ];
  expect(columns.map(({ name, unit }) => [name, unit])).toEqual([
    ['extruded_mass_g', 'g'],
    ['commanded_flow_mm3_per_s', 'mm3/s'],
    ['fan_fraction', '1'],
    ['grade', '{count}'],
    ['sound_level_db_a', 'dB[SPL]{A}'],
  ]);
});
