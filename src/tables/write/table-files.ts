import { formatTableAsHtml } from '../card/table-as-html.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { formatConditionsAsCsv, formatConditionsCsvMetadata } from './conditions-as-csv.ts';
import { formatTableAsCsv } from './table-as-csv.ts';
import { formatTableAsJson } from './table-as-json.ts';
import { formatTableAsMarkdown } from './table-as-markdown.ts';
import { formatTableCsvMetadata } from './table-csv-metadata.ts';

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
    [`${name}.csv`, formatTableAsCsv(table)],
    [`${name}.csv-metadata.json`, formatTableCsvMetadata(table, `${name}.csv`)],
    [`${name}--conditions.csv`, formatConditionsAsCsv(table)],
    [`${name}--conditions.csv-metadata.json`, formatConditionsCsvMetadata(table, `${name}--conditions.csv`)],
    [`${name}.json`, formatTableAsJson(table)],
    [`${name}.md`, formatTableAsMarkdown(table)],
    [`${name}.html`, formatTableAsHtml(table)],
  ];
}
