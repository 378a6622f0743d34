import { tableCautions } from '../../knowledge/cautions.ts';
import { type Origin, originSentence } from '../../knowledge/origin.ts';
import { formatQuirk } from '../../knowledge/quirk-words.ts';
import { jsonText } from '../../text/json-text.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { headingOf, tableColumns } from './columns.ts';
import { inputsHeading, quirksHeading } from './table-as-csv.ts';
import { jsonInputs, tableTitle } from './table-as-json.ts';

/**
 * CSV-on-the-Web metadata (W3C, Metadata Vocabulary for Tabular Data) that gives the cells of the CSV file their
 * types and units. `csvName` is the name of the CSV file beside it.
 */
export function formatTableCsvMetadata(table: SpeedTable, csvName: string): string {
  const columns = tableColumns.map((column) => ({
    name: column.key,
    titles: headingOf(column),
    'dc:description': column.description,
    datatype: column.unit === null ? 'string' : 'decimal',
    ...(column.key === 'flags' && { separator: ' ' }),
    ...(column.mayBeEmpty !== true && { required: true }),
    ...(column.unit !== null && { 'schema:unitText': column.unit }),
  }));
  const quirks = {
    name: quirksHeading,
    titles: quirksHeading,
    'dc:description': 'Field notes of the bench on the pairing, and on the flow and temperature of the row',
    datatype: 'string',
  };
  const inputs = {
    name: inputsHeading,
    titles: inputsHeading,
    'dc:description': 'Documents that the row was derived from, with version and start of the SHA-256 digest',
    datatype: 'string',
    required: true,
  };
  const metadata = {
    '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
    url: csvName,
    'dc:title': tableTitle(table),
    'dc:source': jsonInputs(table),
    notes: [
      ...originNotes(table.origin),
      ...table.quirks.map(formatQuirk),
      ...table.warnings,
      ...tableCautions,
    ],
    dialect: { header: true, encoding: 'utf-8', lineTerminators: ['\r\n'] },
    tableSchema: {
      columns: [...columns, quirks, inputs],
      primaryKey: ['feature', 'layerHeight', 'lineWidth'],
    },
  };
  return jsonText(metadata);
}

function originNotes(origin: Origin): string[] {
  const sentence = originSentence(origin);
  return sentence === null ? [] : [sentence];
}
