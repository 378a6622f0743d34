import { ByteWriter, ParquetWriter } from 'hyparquet-writer/src/index.js';
import type { Cell, ColumnType } from './column.ts';
import type { AnyExportTable } from './export-table.ts';

/** Rows that are held until they are written, and that a reader can skip or read by themselves. */
export const rowsPerGroup = 50_000;

/** A file that grows by rows and is handed on piece by piece. */
interface ParquetFile {
  /** Takes a row. The bytes that can be written now, if there are any. */
  readonly add: (cells: readonly Cell[]) => Uint8Array | null;
  /** The bytes that end the file. */
  readonly end: () => Uint8Array;
}

/** What a column is in Parquet: dates are days since 1970, text is UTF-8. */
const forms = {
  string: { type: 'BYTE_ARRAY', converted_type: 'UTF8' },
  number: { type: 'DOUBLE' },
  integer: { type: 'INT32' },
  boolean: { type: 'BOOLEAN' },
  date: { type: 'INT32', converted_type: 'DATE' },
} as const satisfies Readonly<Record<ColumnType, object>>;

/**
 * A table as a Parquet file, in row groups, compressed and with the least and largest value of each column; the same rows
 * give the same bytes. `program` is the program that writes it, with its version.
 */
export function parquetFile({ columns }: AnyExportTable, program: string): ParquetFile {
  const writer = new ByteWriter();
  const file = new ParquetWriter({
    writer,
    schema: [
      { name: 'table', num_children: columns.length },
      ...columns.map(({ name, type }) => ({ name, repetition_type: 'OPTIONAL' as const, ...forms[type] })),
    ],
    createdBy: program,
  });
  let held: (number | string | boolean | null)[][] = columns.map(() => []);

  function writeGroup(): void {
    const columnData = columns.map(({ name }, index) => ({ name, data: held[index] ?? [] }));
    file.write({ columnData, rowGroupSize: rowsPerGroup });
    held = columns.map(() => []);
  }

  function take(): Uint8Array {
    const bytes = writer.getBytes().slice();
    writer.index = 0;
    return bytes;
  }

  return {
    add: (cells) => {
      for (const [index, { type }] of columns.entries())
        held[index]?.push(stored(cells[index] ?? null, type));
      if ((held[0]?.length ?? 0) < rowsPerGroup) return null;
      writeGroup();
      return take();
    },
    end: () => {
      writeGroup();
      file.finish();
      return take();
    },
  };
}

const dayLength = 86_400_000;

/** A cell as its column stores it; a day that no calendar has is no value. */
function stored(cell: Cell, type: ColumnType): Cell {
  if (cell === null || type !== 'date') return cell;
  const time = Date.parse(`${cell}T00:00:00Z`);
  const isDay = Number.isFinite(time) && new Date(time).toISOString().startsWith(String(cell));
  return isDay ? time / dayLength : null;
}
