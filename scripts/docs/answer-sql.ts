import { join } from 'node:path';
import { DuckDBDateValue, DuckDBInstance, type DuckDBValue } from '@duckdb/node-api';
import { alignedCells } from '../../src/text/text-grid.ts';

/** What an engine for SQL answers over the Parquet files of a folder, in columns that line up. */
export async function answerSql(sql: string, cwd: string, folder = '.'): Promise<string> {
  const connection = await (await DuckDBInstance.create()).connect();
  try {
    await connection.run(`SET file_search_path = '${join(cwd, folder).replaceAll("'", "''")}'`);
    const answer = await connection.runAndReadAll(sql);
    const rows = answer.getRows();
    const columns = answer.columnNames().map((heading, index) => ({
      heading,
      align: rows.some((row) => isNumber(row[index] ?? null)) ? ('right' as const) : ('left' as const),
    }));
    const grid = alignedCells(
      columns,
      rows.map((row) => row.map(cellText)),
    );
    return `${grid.map((row) => row.join('  ')).join('\n')}\n`;
  } finally {
    connection.closeSync();
  }
}

function isNumber(value: DuckDBValue): boolean {
  return typeof value === 'number' || typeof value === 'bigint';
}

function cellText(value: DuckDBValue): string {
  if (value === null) return '';
  return value instanceof DuckDBDateValue ? value.toString() : String(value);
}
