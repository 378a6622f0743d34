import { tableCautions } from '../../knowledge/cautions.ts';
import { formatCsv } from '../../text/csv.ts';
import { jsonText } from '../../text/json-text.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { conditionCell, conditionColumns, conditionHeading } from './condition-columns.ts';
import { jsonInputs, tableTitle } from './table-as-json.ts';

/** The conditions of a table as CSV (RFC 4180), one a line; text that a spreadsheet would run is defused. */
export function formatConditionsAsCsv({ conditions }: SpeedTable): string {
  const rows = conditions.map((row) => conditionColumns.map((column) => conditionCell(row, column)));
  return formatCsv([conditionColumns.map(conditionHeading), ...rows]);
}

/** CSV-on-the-Web metadata of the conditions; `csvName` is the name of the CSV file beside it. */
export function formatConditionsCsvMetadata(table: SpeedTable, csvName: string): string {
  const columns = conditionColumns.map((column) => ({
    name: column.key,
    titles: conditionHeading(column),
    'dc:description': column.description,
    datatype: column.isNumber ? 'decimal' : 'string',
    ...(['condition', 'unit'].includes(column.key) && { required: true }),
    ...(column.key === 'flags' && { separator: ' ' }),
    ...(column.unit !== null && { 'schema:unitText': column.unit }),
  }));
  const metadata = {
    '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
    url: csvName,
    'dc:title': `Conditions of ${tableTitle(table)}`,
    'dc:source': jsonInputs(table),
    notes: [...table.warnings, ...tableCautions],
    dialect: { header: true, encoding: 'utf-8', lineTerminators: ['\r\n'] },
    tableSchema: { columns },
  };
  return jsonText(metadata);
}
