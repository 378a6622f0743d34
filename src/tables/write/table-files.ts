import { sha256Of } from '../../text/sha256.ts';
import { formatTableAsHtml } from '../card/table-as-html.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { formatConditionsAsCsv, formatConditionsCsvMetadata } from './conditions-as-csv.ts';
import { formatTableAsCsv } from './table-as-csv.ts';
import { formatTableAsJson } from './table-as-json.ts';
import { formatTableAsMarkdown } from './table-as-markdown.ts';
import { formatTableAsWorkbook } from './table-as-workbook.ts';
import { formatTableCsvMetadata } from './table-csv-metadata.ts';

/** A file to write: its name and its text, or its bytes. */
export type NamedFile = readonly [name: string, content: string | Uint8Array];

/** Letters of a name without its endings at most, so that no name of a file reaches 120. */
const longestName = 80;

/**
 * What the files of a table are called, without their endings; a long name is cut, and its digest tells it from others.
 * One of several temperatures names its own: `…--230c`.
 */
export function tableFileName(
  { machine, nozzle, filament, policy, temperatures }: SpeedTable,
  isOfFamily = false,
): string {
  const temperature = isOfFamily ? `--${temperatures.print}c` : '';
  const name = [machine, nozzle, filament, policy].join('--').replaceAll('/', '-');
  if (name.length + temperature.length <= longestName) return name + temperature;
  const digest = sha256Of(name).slice(0, 12);
  return `${name.slice(0, longestName - temperature.length - digest.length - 2)}--${digest}${temperature}`;
}

/** Every form of a table as a file; one of a family of temperatures names its own. */
export function tableFiles(table: SpeedTable, isOfFamily = false): NamedFile[] {
  const name = tableFileName(table, isOfFamily);
  return [
    [`${name}.csv`, formatTableAsCsv(table)],
    [`${name}.csv-metadata.json`, formatTableCsvMetadata(table, `${name}.csv`)],
    [`${name}--conditions.csv`, formatConditionsAsCsv(table)],
    [`${name}--conditions.csv-metadata.json`, formatConditionsCsvMetadata(table, `${name}--conditions.csv`)],
    [`${name}.json`, formatTableAsJson(table)],
    [`${name}.md`, formatTableAsMarkdown(table)],
    [`${name}.html`, formatTableAsHtml(table)],
    [`${name}.xlsx`, formatTableAsWorkbook(table)],
  ];
}
