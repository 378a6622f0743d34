import type { Source } from '../registry/generated/documents.ts';
import type { Profile } from '../registry/profile.ts';
import { flag, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, rowOf } from './export-table.ts';

type Cited = Profile<'source'>;

const ofSource = (name: string, description: string, cell: (source: Source) => string | undefined) =>
  words<Cited>(name, description, ({ data }) => cell(data));

/** One row per source that values cite. */
export const sourcesTable: ExportTable<Cited> = {
  name: 'sources',
  title: 'Sources',
  description: 'One row per source that values cite.',
  primaryKey: ['source_id'],
  foreignKeys: [],
  columns: [
    ofSource('source_id', 'Source', ({ id }) => id),
    ofSource('type', 'Type of the item, by CSL-JSON', ({ type }) => type),
    ofSource('title', 'Title', ({ title }) => title),
    ofSource('authors', 'Authors, separated by semicolons', ({ author }) => author?.map(nameOf).join('; ')),
    ofSource('year', 'Year of issue', ({ issued }) => issued?.['date-parts'][0]?.[0]?.toString()),
    ofSource('edition', 'Edition', ({ edition }) => edition),
    ofSource('publisher', 'Publisher', ({ publisher }) => publisher),
    ofSource('doi', 'Digital object identifier', ({ DOI }) => DOI),
    ofSource('isbn', 'ISBN', ({ ISBN }) => ISBN),
    ofSource('url', 'Address', ({ URL }) => URL),
    ofSource('license', 'Licence under which it may be used', ({ license }) => license),
    flag('is_invented', 'Whether the source is invented', ({ data }) => data.invented === true),
    words('file', 'File of the source', ({ source }) => source.relativePath),
    words('file_sha256', 'SHA-256 of that file with LF line ends', ({ source }) => source.digest),
  ],
};

/** `Family, Given`, or an organisation. */
function nameOf({ family, given, literal }: NonNullable<Source['author']>[number]): string {
  return literal ?? [family, given].filter((part) => part !== undefined).join(', ');
}

/** Every source, in the order of its files. */
export function* sourceRows({ registry }: ExportSource): Generator<ExportedRow> {
  for (const source of registry.source.values()) yield rowOf(sourcesTable, source);
}
