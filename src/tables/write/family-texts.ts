import { formatCsv } from '../../text/csv.ts';
import type { TextFormat } from '../../text/format-text.ts';
import { jsonText } from '../../text/json-text.ts';
import { formatDocument } from '../../units/format-document.ts';
import type { TableFamily } from '../derive/table-family.ts';
import { familyDocument } from './family-document.ts';
import { csvHeader, csvRows } from './table-as-csv.ts';
import { jsonTable } from './table-as-json.ts';
import { formatTableAsMarkdown } from './table-as-markdown.ts';
import { formatTableAsText } from './table-as-text.ts';

/** The overview of a family and its tables one after the other, for a terminal. */
export function formatFamilyAsText(family: TableFamily, format: TextFormat = {}): string {
  const tables = family.tables.map((table) => formatTableAsText(table, format));
  return [formatDocument(familyDocument(family), 'text', format), ...tables].join('\n\n');
}

/** The same as Markdown. */
export function formatFamilyAsMarkdown(family: TableFamily): string {
  return [
    formatDocument(familyDocument(family), 'markdown'),
    ...family.tables.map(formatTableAsMarkdown),
  ].join('\n');
}

/** The rows of all tables as CSV; the first column names the nozzle temperature that a row's table is for. */
export function formatFamilyAsCsv({ tables }: TableFamily): string {
  const rows = tables.flatMap((table) => csvRows(table).map((row) => [table.temperatures.print, ...row]));
  return formatCsv([['tableTemperature [Cel]', ...csvHeader], ...rows]);
}

/** The tables as one JSON document, with the temperature that the policy would take. */
export function formatFamilyAsJson({ tables, chosen, chosenBy }: TableFamily): string {
  const document = {
    format: 'meltbounds-table-family/1',
    chosen: { nozzleTemperature: { value: chosen, unit: 'Cel' }, by: chosenBy },
    tables: tables.map(jsonTable),
  };
  return jsonText(document);
}
