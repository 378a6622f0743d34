import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import type { SpeedTable } from '../tables/speed-table.ts';
import { writeConditionsCsv, writeConditionsMetadata } from '../tables/write-conditions-csv.ts';
import { writeCsv } from '../tables/write-csv.ts';
import { writeCsvMetadata } from '../tables/write-csv-metadata.ts';
import { writeHtml } from '../tables/write-html.ts';
import { writeJson } from '../tables/write-json.ts';
import { writeMarkdown } from '../tables/write-markdown.ts';

/** Writes every form of a table into a folder and returns the names of the files. */
export async function writeTables(table: SpeedTable, folder: string): Promise<string[]> {
  const name = [table.machine, table.nozzle, table.filament, table.policy].join('--').replaceAll('/', '-');
  const files: readonly (readonly [string, string])[] = [
    [`${name}.csv`, writeCsv(table)],
    [`${name}.csv-metadata.json`, writeCsvMetadata(table, `${name}.csv`)],
    [`${name}--conditions.csv`, writeConditionsCsv(table)],
    [`${name}--conditions.csv-metadata.json`, writeConditionsMetadata(table, `${name}--conditions.csv`)],
    [`${name}.json`, writeJson(table)],
    [`${name}.md`, writeMarkdown(table)],
    [`${name}.html`, writeHtml(table)],
  ];
  mkdirSync(folder, { recursive: true });
  for (const [file, text] of files) await writeFileAtomic(join(folder, file), text);
  return files.map(([file]) => file);
}
