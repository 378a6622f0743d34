import { tableCautions } from '../../knowledge/cautions.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { inPrint } from '../../units/in-print.ts';
import { htmlPage } from '../card/html-page.ts';
import { captionedTable, cell, headingRow, rowHeading } from '../card/html-table.ts';
import type { OmittedPairing, TabledPairing, TableIndex } from './table-index.ts';

/** The index as an HTML page that links every file of every table, and says why other pairings have none. */
export function formatTableIndexAsHtml({ tabled, omitted }: TableIndex): string {
  const policies = [...new Set(tabled.map(({ policy }) => policy))];
  return htmlPage('Tables of the registry', [
    element('header', {}, [element('h1', {}, ['Tables of the registry'])]),
    element('main', {}, [
      element('section', { class: 'caution', 'aria-labelledby': 'cautions' }, [
        element('h2', { id: 'cautions' }, ['Before you print']),
        element(
          'ul',
          {},
          tableCautions.map((caution) => element('li', {}, [caution])),
        ),
      ]),
      ...policies.map((policy, index) =>
        section(`policy-${index + 1}`, `House rules: ${policy}`, [
          tabledTable(
            policy,
            tabled.filter((entry) => entry.policy === policy),
          ),
        ]),
      ),
      section('omitted', 'Without a table', [
        omitted.length === 0 ? element('p', {}, ['Every pairing has a table.']) : omittedTable(omitted),
      ]),
    ]),
  ]);
}

function section(id: string, heading: string, content: readonly Markup[]): Markup {
  return element('section', { 'aria-labelledby': id }, [element('h2', { id }, [heading]), ...content]);
}

function tabledTable(policy: string, entries: readonly TabledPairing[]): Markup {
  const columns = [
    { heading: 'Machine', unit: null, isNumber: false },
    { heading: 'Nozzle', unit: null, isNumber: false },
    { heading: 'Filament', unit: null, isNumber: false },
    { heading: 'Largest flow', unit: 'mm3/s', isNumber: true },
    { heading: 'Weakest number', unit: null, isNumber: false },
    { heading: 'Warnings', unit: null, isNumber: true },
    { heading: 'Files', unit: null, isNumber: false },
  ];
  const rows = entries.map((entry) =>
    element('tr', {}, [
      ...[entry.machine, entry.nozzle, entry.filament].map(rowHeading),
      cell(entry.largestFlow),
      cell(entry.weakestBasis),
      cell(entry.warnings),
      element('td', {}, [fileLinks(entry)]),
    ]),
  );
  return captionedTable(
    `Tables by the house rules ${policy}`,
    'listing',
    [headingRow(columns)],
    [element('tbody', {}, rows)],
  );
}

/** Links to the files that people open, the page first; programs find the metadata beside its CSV file. */
function fileLinks({ folder, files }: TabledPairing): Markup {
  return element(
    'ul',
    { class: 'files' },
    files
      .filter((file) => !file.endsWith('-metadata.json'))
      .toSorted((one, other) => rankOf(one) - rankOf(other))
      .map((file) =>
        element('li', {}, [
          element('a', { href: [...folder.split('/'), file].map(encodeURIComponent).join('/') }, [
            endingOf(file),
          ]),
        ]),
      ),
  );
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

function omittedTable(entries: readonly OmittedPairing[]): Markup {
  const headings = ['Machine', 'Nozzle', 'Filament', 'House rules', 'Why'];
  const rows = casesOf(entries).map(({ entry, policies }) =>
    element('tr', {}, [
      ...[entry.machine, entry.nozzle, entry.filament].map(rowHeading),
      cell(policies.join(', ')),
      cell(inPrint(entry.reason)),
    ]),
  );
  return captionedTable(
    'Pairings that were left out',
    'listing',
    [headingRow(headings.map((heading) => ({ heading, unit: null, isNumber: false })))],
    [element('tbody', {}, rows)],
  );
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
