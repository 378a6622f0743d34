import { element, type Markup } from '../../text/html-element.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { captionedTable, cell, headingRow, rowHeading } from './html-table.ts';

const headings = ['Id', 'Kind', 'Version', 'SHA-256 of the file'];

/** The documents that the table was derived from, with version and digest. */
export function inputsTable({ inputs }: SpeedTable): Markup {
  const rows = inputs.map(({ kind, id, version, digest }) =>
    element('tr', {}, [
      rowHeading(id),
      cell(kind),
      cell(version ?? 'none'),
      element('td', { class: 'digest' }, [digest]),
    ]),
  );
  return captionedTable(
    'Documents, with the digest that tells whether they have changed since',
    'inputs',
    [headingRow(headings.map((heading) => ({ heading, unit: null, isNumber: false })))],
    [element('tbody', {}, rows)],
  );
}
