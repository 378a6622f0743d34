import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance, type JS } from '@duckdb/node-api';
import { expect } from 'vitest';
import { runCommand } from '../run-command.ts';

/** A descriptor as far as the tests look into it. */
export interface Descriptor {
  readonly resources: readonly {
    readonly name: string;
    readonly path: string;
    readonly bytes: number;
    readonly hash: string;
    readonly rows: number;
    readonly schema: {
      readonly fields: readonly { readonly name: string; readonly type: string; readonly unit?: string }[];
      readonly primaryKey: readonly string[];
      readonly foreignKeys?: readonly {
        readonly fields: readonly string[];
        readonly reference: { readonly resource: string; readonly fields: readonly string[] };
      }[];
    };
  }[];
}

/** An export of the registry in a folder, and ways to look into it. */
export interface Exported {
  readonly folder: string;
  readonly descriptor: Descriptor;
  /** The rows of an answer, as an engine that shares no code with the writer reads the files. */
  readonly ask: (sql: string) => Promise<readonly Readonly<Record<string, JS>>[]>;
}

/** Exports the registry of a working directory by the command, and opens what came of it. */
export async function exported(cwd: string): Promise<Exported> {
  expect(await runCommand(cwd, ['export', '--out', 'export'])).toMatchObject({ status: 0, err: '' });
  return openExport(join(cwd, 'export'));
}

export function openExport(folder: string): Exported {
  return {
    folder,
    descriptor: JSON.parse(readFileSync(join(folder, 'datapackage.json'), 'utf8')),
    ask: (sql) => askFolder(folder, sql),
  };
}

/** What an engine answers over the files of a folder. */
export async function askFolder(
  folder: string,
  sql: string,
): Promise<readonly Readonly<Record<string, JS>>[]> {
  const connection = await (await DuckDBInstance.create()).connect();
  try {
    await connection.run(`SET file_search_path = '${folder.replaceAll("'", "''")}'`);
    return (await connection.runAndReadAll(sql)).getRowObjectsJS();
  } finally {
    connection.closeSync();
  }
}
