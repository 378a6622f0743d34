import { type Result, success } from '../../result.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { ColumnPlan } from './column-plan.ts';
import { readColumnHeads } from './sheet-columns.ts';
import type { SheetTable } from './sheet-table.ts';

/**
 * A table without the rows whose reading, in the column named, has not been taken yet, as a sheet holds them while it is
 * filled in. The problems are those of its columns.
 */
export function withoutUnread(
  table: SheetTable,
  plan: ColumnPlan,
  reading: string,
): Result<SheetTable, readonly BenchProblem[]> {
  const columns = readColumnHeads(table.header, plan);
  if (!columns.ok) return columns;
  const place = columns.value.findIndex(({ head }) => head?.name === reading);
  const rows = table.rows.filter(({ cells }) => (cells[place] ?? '') !== '');
  return success({ ...table, rows });
}
