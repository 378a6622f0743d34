import type { ReduceById } from '../bench/reducing-once.ts';
import type { Registry } from '../registry/registry.ts';
import type { Cell, Column } from './column.ts';

/** Columns of a table that name a row of another one. */
interface ForeignKey {
  readonly columns: readonly string[];
  readonly table: string;
  /** The columns there, in the same order. */
  readonly references: readonly string[];
}

/** A table of an export: what its rows are, and how each becomes cells. */
export interface ExportTable<Row> {
  /** Name of the table, and of its file without its ending. */
  readonly name: string;
  readonly title: string;
  /** What one row is, and what a reader must know. */
  readonly description: string;
  readonly primaryKey: readonly string[];
  readonly foreignKeys: readonly ForeignKey[];
  readonly columns: readonly Column<Row>[];
}

/** A table whatever its rows are made from. */
export type AnyExportTable = ExportTable<never>;

/** What the rows of an export are made from. */
export interface ExportSource {
  readonly registry: Registry;
  /** Date by which the evidence is judged, YYYY-MM-DD. */
  readonly today: string;
  /** Reduces a trial to its results, each once. */
  readonly reduce: ReduceById;
}

/** A row of the table of that name, its cells in the order of the columns. */
export interface ExportedRow {
  readonly table: string;
  readonly cells: readonly Cell[];
}

/** The cells of a row. */
export function rowOf<Row>({ name, columns }: ExportTable<Row>, row: Row): ExportedRow {
  return { table: name, cells: columns.map(({ cell }) => cell(row) ?? null) };
}

/** A column, or several, that names a row of another table by columns of the same names. */
export function refersTo(table: string, ...columns: readonly string[]): ForeignKey {
  return { columns, table, references: columns };
}
