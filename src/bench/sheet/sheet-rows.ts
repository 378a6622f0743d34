import { failure, type Result, success } from '../../result.ts';
import type { CellSeparator } from '../../text/csv.ts';
import { oneLine } from '../../text/one-line.ts';
import { quote } from '../../text/quote.ts';
import { toCanonical } from '../../units/convert-unit.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { type NumberCell, type NumberStyle, numberStyle } from './decimal-sign.ts';
import { type DecimalSign, numberForms } from './number-forms.ts';
import { isReading, type Observations } from './observations.ts';
import { raggedRow } from './ragged-row.ts';
import type { ColumnHead, SheetColumn } from './sheet-columns.ts';
import type { SheetCell, SheetRow } from './sheet-row.ts';
import type { SheetTable } from './sheet-table.ts';

/** What somebody wrote beside a reading, on one line. */
export interface SheetNote {
  readonly row: number;
  readonly text: string;
}

/** The numbers of a sheet in canonical units, and what was understood to read them. */
interface SheetNumbers {
  readonly observations: Observations;
  readonly decimal: DecimalSign | null;
  readonly notes: readonly SheetNote[];
}

/** Reads the rows of a table below its columns as numbers in canonical units, and its notes as they are. */
export function sheetNumbers(
  columns: readonly SheetColumn[],
  { rows, separator }: Pick<SheetTable, 'rows' | 'separator'>,
  asked: DecimalSign | undefined,
): Result<SheetNumbers, readonly BenchProblem[]> {
  const whole = rows.map((row) => withOpenNote(row, columns));
  const ragged = whole.filter(({ cells }) => cells.length !== columns.length);
  const even = whole.filter(({ cells }) => cells.length === columns.length);
  const style = numberStyle(numberCells(columns, even), separator, asked);
  const readings = style.ok ? even.map((row) => readRow(row, columns, style.value)) : [];
  const problems = [
    ...ragged.map((row) => raggedRow(row, columns, separator)),
    ...(style.ok ? [] : style.error),
    ...even.flatMap((row) => doubtfulNotes(row, columns, separator)),
    ...readings.flat().flatMap((read) => (read.ok ? [] : [read.error])),
  ];
  if (problems.length > 0 || !style.ok) {
    return failure(problems.sort((one, other) => (one.row ?? 0) - (other.row ?? 0)));
  }
  const heads = columns.flatMap(({ head }) => head ?? []);
  const values = readings.map((row) => row.flatMap((read) => (read.ok ? [read.value] : [])));
  return success({
    observations: {
      columns: Object.fromEntries(
        heads.map(({ name }, index) => [name, values.map((row) => row[index] ?? Number.NaN)]),
      ),
      rows: even.map(({ row }) => row),
    },
    decimal: style.value.decimal,
    notes: even.flatMap((row) => notesIn(row, columns)),
  });
}

/** A row that leaves out the note at its end. */
function withOpenNote(row: SheetRow, columns: readonly SheetColumn[]): SheetRow {
  const isOpen = row.cells.length === columns.length - 1 && columns.at(-1)?.head === null;
  return isOpen ? { ...row, cells: [...row.cells, ''] } : row;
}

function numberCells(columns: readonly SheetColumn[], rows: readonly SheetRow[]): NumberCell[] {
  return rows.flatMap(({ cells, row }) =>
    columns.flatMap(({ head }, index) => {
      const text = cells[index];
      return head === null || typeof text !== 'string' ? [] : [{ column: head.name, text, row }];
    }),
  );
}

/** Between commas a note that is a number may be the decimals of the cell before it. */
function doubtfulNotes(
  { cells, row }: SheetRow,
  columns: readonly SheetColumn[],
  separator: CellSeparator | null,
): BenchProblem[] {
  if (separator !== ',') return [];
  return columns.flatMap(({ head, heading }, index) => {
    const note = cells[index] ?? '';
    if (head !== null || typeof note !== 'string' || !/^\d+(?:\.\d*)?$/.test(note)) return [];
    return [
      {
        code: 'ambiguousNumber' as const,
        message: `${quote(heading)} \`${quote(note)}\` can be read as a note or as part of a number with a decimal comma`,
        found: quote(note),
        help: 'write decimal points and words in notes, or semicolons between the cells',
        row,
      },
    ];
  });
}

function notesIn({ cells, row }: SheetRow, columns: readonly SheetColumn[]): SheetNote[] {
  return columns.flatMap(({ head }, index) => {
    const text = head === null ? oneLine(`${cells[index] ?? ''}`).trim() : '';
    return text === '' ? [] : [{ row, text }];
  });
}

function readRow({ cells, row }: SheetRow, columns: readonly SheetColumn[], style: NumberStyle) {
  return columns.flatMap(({ head }, index) =>
    head === null ? [] : [readCell(cells[index] ?? '', head, style, row)],
  );
}

function readCell(
  cell: SheetCell,
  { name, unit }: ColumnHead,
  { decimal }: NumberStyle,
  row: number,
): Result<number, BenchProblem> {
  const forms = typeof cell === 'number' ? { '.': cell, ',': null } : numberForms(cell);
  const value = forms[typeof cell === 'number' ? '.' : (decimal ?? '.')];
  const reading = value === null ? null : toCanonical(value, unit);
  if (reading !== null && isReading(reading)) return success(reading);
  const at = { found: quote(cell), row };
  if (cell === '') {
    return failure({
      code: 'emptyCell',
      message: `${name} has no value here`,
      help: 'write the reading, or delete the row if it was not taken',
      ...at,
    });
  }
  if (value === null && forms[','] !== null) {
    return failure({
      code: 'decimalComma',
      message: `${name} \`${quote(cell)}\` has a decimal comma`,
      help: `write a decimal point: ${forms[',']}; or separate the cells by semicolons or tabulators`,
      ...at,
    });
  }
  return failure({
    code: 'notANumber',
    message: `${name} \`${quote(cell)}\` is ${value === null ? 'not a number' : 'no number that an instrument shows'}`,
    help: `write the number alone, in ${unit.code} as the header says; put remarks into a column \`note\``,
    ...at,
  });
}
