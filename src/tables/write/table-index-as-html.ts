import { tableCautions } from '../../knowledge/cautions.ts';
import {
  type Column,
  type Document,
  leftColumns,
  list,
  paragraph,
  rowNames,
  section,
  type Table,
  table,
} from '../../text/document.ts';
import { link, type Text } from '../../text/inline.ts';
import { htmlPage } from '../card/html-page.ts';
import type { OmittedPairing, TabledPairing, TableIndex } from './table-index.ts';

const title = 'Tables of the registry';

/** The index as an HTML page that links every file of every table, and says why other pairings have none. */
export function formatTableIndexAsHtml(index: TableIndex): string {
  return htmlPage(title, tableIndexDocument(index));
}

/** Which pairings have tables, with links to their files, and why the others have none. */
export function tableIndexDocument({ tabled, omitted }: TableIndex): Document {
  const policies = [...new Set(tabled.map(({ policy }) => policy))];
  return {
    title,
    blocks: [
      section('Before you print', [list(tableCautions)], 'cautions', 'caution'),
      ...policies.map((policy, index) => {
        const entries = tabled.filter((entry) => entry.policy === policy);
        return section(`House rules: ${policy}`, [tabledTable(policy, entries)], `policy-${index + 1}`);
      }),
      section(
        'Without a table',
        [omitted.length === 0 ? paragraph('Every pairing has a table.') : omittedTable(omitted)],
        'omitted',
      ),
    ],
  };
}

const pairingColumns = rowNames('Machine', 'Nozzle', 'Filament');

const tabledColumns: readonly Column[] = [
  ...pairingColumns,
  { heading: 'Largest flow', unit: 'mm3/s', align: 'right' },
  { heading: 'Weakest number', align: 'left' },
  { heading: 'Warnings', align: 'right' },
  { heading: 'Files', align: 'left' },
];

function tabledTable(policy: string, entries: readonly TabledPairing[]): Table {
  const rows = entries.map((entry) => [
    entry.machine,
    entry.nozzle,
    entry.filament,
    entry.largestFlow,
    [entry.weakestBasis, ...(entry.flags.length === 0 ? [] : [`(${entry.flags.join(', ')})`])].join(' '),
    entry.warnings,
    fileLinks(entry),
  ]);
  return table(tabledColumns, rows, { caption: `Tables by the house rules ${policy}`, name: 'listing' });
}

/** Links to the files that people open, the page first; programs find the metadata beside its CSV file. */
function fileLinks({ folder, files }: TabledPairing): Text {
  return files
    .filter((file) => !file.endsWith('-metadata.json'))
    .toSorted((one, other) => rankOf(one) - rankOf(other))
    .flatMap((file, index) => {
      const address = [...folder.split('/'), file].map(encodeURIComponent).join('/');
      return [...(index === 0 ? [] : [', ']), link(endingOf(file), address)];
    });
}

/** The place of a file among the links. */
function rankOf(file: string): number {
  return file.endsWith('.html') ? 0 : 1;
}

/** What tells the files of a table apart: `html`, `conditions.csv`. */
function endingOf(file: string): string {
  const last = file.slice(file.lastIndexOf('--') + 2);
  const [, ending = last] = /^[^.]*\.(.+)$/.exec(last) ?? [];
  return /^conditions\./.test(last) ? last : ending;
}

function omittedTable(entries: readonly OmittedPairing[]): Table {
  const rows = casesOf(entries).map(({ entry: { machine, nozzle, filament, reason }, policies }) => [
    machine,
    nozzle,
    filament,
    policies.join(', '),
    reason,
  ]);
  return table([...pairingColumns, ...leftColumns('House rules', 'Why')], rows, {
    caption: 'Pairings that were left out',
    name: 'listing',
  });
}

interface OmittedCase {
  readonly entry: OmittedPairing;
  readonly policies: readonly string[];
}

/** Pairings that several policies leave out for the same reason stand once. */
function casesOf(entries: readonly OmittedPairing[]): OmittedCase[] {
  const cases = new Map<string, OmittedCase>();
  for (const entry of entries) {
    const { policy, machine, nozzle, filament, reason } = entry;
    const key = JSON.stringify([machine, nozzle, filament, reason]);
    cases.set(key, { entry, policies: [...(cases.get(key)?.policies ?? []), policy] });
  }
  return [...cases.values()];
}
