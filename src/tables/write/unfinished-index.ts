import { cautions } from '../../text/document.ts';
import { jsonText } from '../../text/json-text.ts';
import { htmlPage } from '../card/html-page.ts';
import type { NamedFile } from './table-files.ts';

const notice =
  'These tables are not finished: they are being written now, or the run that wrote them was cut off. Some may be older than others. Write them again.';

/** Stands in the place of the index while tables are written, so that a run that is cut off leaves no old index to new tables. */
export function unfinishedIndex(): NamedFile[] {
  return [
    [
      'index.html',
      htmlPage('Unfinished tables', { title: 'Unfinished tables', blocks: [cautions([notice])] }),
    ],
    ['index.json', jsonText({ format: 'meltbounds-tables-unfinished/1', notice })],
    ['index.csv', `${notice}\r\n`],
  ];
}
