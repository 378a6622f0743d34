import { type Result, success } from '../../result.ts';
import type { CellSeparator } from '../../text/csv.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { ColumnPlan } from './column-plan.ts';
import type { DecimalSign } from './number-forms.ts';
import type { Observations } from './observations.ts';
import { readColumnHeads, type SheetColumn } from './sheet-columns.ts';
import { type SheetNote, sheetNumbers } from './sheet-rows.ts';
import { readSheetText, type SheetTable } from './sheet-table.ts';

/** A bench sheet as it was understood. */
export interface ReadSheet {
  readonly observations: Observations;
  /** What stands between the cells; null for those of a workbook. */
  readonly separator: CellSeparator | null;
  /** Null where no number shows it. */
  readonly decimal: DecimalSign | null;
  /** The columns in their order; those of notes have no head. */
  readonly columns: readonly SheetColumn[];
  readonly notes: readonly SheetNote[];
}

/**
 * Reads a bench sheet: a header row of `name [unit]` and rows of numbers below it, separated by commas (RFC 4180), semicolons or
 * tabulators, as observations in canonical units. `plan` names the columns that must or may be there, in any order; beside them
 * there may be notes. A sheet that can be read in two ways is refused with both of them.
 */
export function readBenchSheet(
  text: string,
  plan: ColumnPlan,
): Result<Observations, readonly BenchProblem[]> {
  const sheet = readSheet(text, plan);
  return sheet.ok ? success(sheet.value.observations) : sheet;
}

/** The same with what was understood; `decimal` is the decimal sign where the user has named it. */
export function readSheet(
  text: string,
  plan: ColumnPlan,
  decimal?: DecimalSign,
): Result<ReadSheet, readonly BenchProblem[]> {
  const table = readSheetText(text);
  return table.ok ? readSheetTable(table.value, plan, decimal) : table;
}

/** Reads a table whose cells are known already. */
export function readSheetTable(
  table: SheetTable,
  plan: ColumnPlan,
  decimal?: DecimalSign,
): Result<ReadSheet, readonly BenchProblem[]> {
  const columns = readColumnHeads(table.header, plan);
  if (!columns.ok) return columns;
  const numbers = sheetNumbers(columns.value, table, decimal);
  if (!numbers.ok) return numbers;
  return success({ ...numbers.value, columns: columns.value, separator: table.separator });
}
