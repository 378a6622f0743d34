import { tableCautions } from '../../knowledge/cautions.ts';
import { jsonText } from '../../text/json-text.ts';
import type { TableIndex } from './table-index.ts';

/** Version of the form of the JSON index: it grows when a program that reads it must change. */
const indexFormat = 'meltbounds-tables-index/1';

/** The index as JSON: every table with its files, every pairing that has none with the reason. */
export function formatTableIndexAsJson({ tabled, omitted }: TableIndex): string {
  const document = {
    format: indexFormat,
    tabled: tabled.map(({ largestFlow, ...rest }) => ({
      ...rest,
      largestFlow: { value: largestFlow, unit: 'mm3/s' },
    })),
    omitted,
    cautions: tableCautions,
  };
  return jsonText(document);
}
