import type { AnyProfile, Profile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { isFar, transpositions } from './quantity-slips.ts';
import type { Slip, Stage } from './slip.ts';
import type { SlipKind } from './slip-kinds.ts';
import { type WrittenReadings, writtenReadings } from './written-readings.ts';

/** What instruments show, as opposed to what was set; grades have too few steps for a share of them. */
export const measuredColumns =
  /^(?:extrudedMass|firstDiameter|secondDiameter|bondStrength|rippleAmplitude|mass|soundLevel|printTime|duration|defectSize|referenceTemperature|referenceHumidity)$/;

const stages: readonly Stage[] = ['nothingAdopted', 'adoptedFromThem'];

interface Sheet extends WrittenReadings {
  readonly trial: Profile<'trial'>;
}

/** Slips in the readings of a trial: before anything is adopted from them, and where a limit rests on them already. */
export function readingSlips(profile: AnyProfile, registry: Registry): Slip[] {
  if (profile.kind !== 'trial') return [];
  const readings = writtenReadings(profile);
  if (readings === null) return [];
  const sheet = { ...readings, trial: profile };
  const before = stages.flatMap((stage) => [
    ...alteredCells(sheet, stage),
    ...exchangedColumns(sheet, stage),
    ...pastedRows(sheet, stage),
  ]);
  return isAdopted(profile, registry) ? [...before, ...changedAfterwards(sheet)] : before;
}

function isAdopted({ id }: AnyProfile, { profiles }: Registry): boolean {
  const words = `"evidence":${JSON.stringify(id)}`;
  return profiles.some(({ kind, data }) => kind !== 'trial' && JSON.stringify(data).includes(words));
}

interface Cell {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

function measuredCells({ columns, rows }: Sheet): Cell[] {
  return rows.flatMap((cells, row) =>
    cells.flatMap((text, column) =>
      measuredColumns.test(columns[column] ?? '') && Number(text) !== 0 ? [{ row, column, text }] : [],
    ),
  );
}

function alteredCells(sheet: Sheet, stage: Stage): Slip[] {
  const { method } = sheet.trial.data;
  const of = method === 'flowLadder' ? 'flow ladder' : 'other methods';
  return measuredCells(sheet).flatMap((cell) => [
    ...[0.9, 1.1].flatMap((factor) =>
      altered(`reading +-10 %, ${of}`, sheet, cell, scaled(cell, factor), stage),
    ),
    ...[0.95, 1.05].flatMap((factor) =>
      altered(`reading +-5 %, ${of}`, sheet, cell, scaled(cell, factor), stage),
    ),
    ...[10, 0.1].flatMap((factor) => altered('reading x10 or /10', sheet, cell, scaled(cell, factor), stage)),
    ...transpositions(cell.text)
      .filter((digits) => isFar(digits, Number(cell.text)))
      .flatMap((digits) => altered('reading transposed > 30 %', sheet, cell, digits, stage)),
  ]);
}

/** A reading that is put right, or wrong, once a limit rests on the sheet. */
function changedAfterwards(sheet: Sheet): Slip[] {
  return measuredCells(sheet).flatMap((cell) =>
    [0.98, 1.02].flatMap((factor) =>
      altered('reading changed after adoption', sheet, cell, scaled(cell, factor), undefined),
    ),
  );
}

function scaled({ text }: Cell, factor: number): string {
  const decimals = text.split('.')[1]?.length ?? 0;
  return (Number(text) * factor).toFixed(decimals);
}

function altered(
  kind: SlipKind,
  sheet: Sheet,
  { row, column, text }: Cell,
  after: string,
  stage: Stage | undefined,
): Slip[] {
  if (after === text || Number(after) === 0) return [];
  const cells = sheet.rows[row] ?? [];
  const rows = sheet.rows.with(row, cells.with(column, after));
  return sheetSlip(kind, sheet, rows, stage, {
    ...{ pointer: `/observations/rows/${row}/${column}`, before: cells.join(', '), after },
    // A row of a sheet is counted with its header.
    words: [sheet.columns[column] ?? '', `row ${row + (sheet.file.endsWith('.csv') ? 2 : 1)}`],
  });
}

/** Two columns of numbers under each other's names. */
function exchangedColumns(sheet: Sheet, stage: Stage): Slip[] {
  const { columns, rows } = sheet;
  return columns.slice(1).flatMap((name, index) => {
    const exchanged = rows.map((row) =>
      row.with(index, row[index + 1] ?? '').with(index + 1, row[index] ?? ''),
    );
    const before = `${columns[index]}, ${name}`;
    return sheetSlip('columns exchanged', sheet, exchanged, stage, {
      ...{ pointer: '/observations', before, after: `${name}, ${columns[index]}` },
      words: [name, columns[index] ?? ''],
    });
  });
}

/** A row that is told twice, several of them again at the end, and a row over the one below it. */
function pastedRows(sheet: Sheet, stage: Stage): Slip[] {
  const { rows } = sheet;
  const pasted = (changed: readonly (readonly string[])[], before: string, after: string) =>
    sheetSlip('pasted rows', sheet, changed, stage, {
      ...{ pointer: '/observations', before, after, words: ['told twice', 'same rows', 'repeated'] },
    });
  const block = rows.slice(0, 4);
  return [
    ...rows.flatMap((row, index) =>
      pasted([...rows.slice(0, index + 1), row, ...rows.slice(index + 1)], `row ${index + 1}`, 'told twice'),
    ),
    ...(rows.length < 6 ? [] : pasted([...rows, ...block], 'rows 1 to 4', 'again at the end')),
    ...rows
      .slice(4)
      .flatMap((_, index) =>
        pasted(
          [...rows.slice(0, index + 2), ...rows.slice(index, index + 2), ...rows.slice(index + 4)],
          `rows ${index + 1} and ${index + 2}`,
          'pasted over the two below',
        ),
      ),
  ].filter(({ edits }) => [...edits.values()][0] !== sheet.withRows(rows));
}

function sheetSlip(
  kind: SlipKind,
  { trial, file, withRows }: Sheet,
  rows: readonly (readonly string[])[],
  stage: Stage | undefined,
  told: Pick<Slip, 'pointer' | 'before' | 'after' | 'words'>,
): Slip[] {
  const inSheet = file.endsWith('.csv');
  const rests = stage === undefined ? {} : { adoption: { trial: trial.id, stage } };
  const pointer = inSheet ? '/observations/file' : told.pointer;
  return [{ ...told, ...rests, kind, file, pointer, edits: new Map([[file, withRows(rows)]]) }];
}
