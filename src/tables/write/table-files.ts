import { writeHtml } from '../card/write-html.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { writeConditionsCsv, writeConditionsMetadata } from './write-conditions-csv.ts';
import { writeCsv } from './write-csv.ts';
import { writeCsvMetadata } from './write-csv-metadata.ts';
import { writeJson } from './write-json.ts';
import { writeMarkdown } from './write-markdown.ts';

/** A file to write: its name and its text. */
export type NamedText = readonly [name: string, text: string];

/** What the files of a table are called, without their endings. */
export function tableFileName({ machine, nozzle, filament, policy }: SpeedTable): string {
  return [machine, nozzle, filament, policy].join('--').replaceAll('/', '-');
}

/** Every form of a table as a file. */
export function tableFiles(table: SpeedTable): NamedText[] {
  const name = tableFileName(table);
  return [
    [`${name}.csv`, writeCsv(table)],
    [`${name}.csv-metadata.json`, writeCsvMetadata(table, `${name}.csv`)],
    [`${name}--conditions.csv`, writeConditionsCsv(table)],
    [`${name}--conditions.csv-metadata.json`, writeConditionsMetadata(table, `${name}--conditions.csv`)],
    [`${name}.json`, writeJson(table)],
    [`${name}.md`, writeMarkdown(table)],
    [`${name}.html`, writeHtml(table)],
  ];
}
