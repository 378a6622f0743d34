import { groupedBy } from '../../registry/grouped-by.ts';
import { type Block, leftColumns, rowNames, type Table, table } from '../../text/document.ts';
import { link } from '../../text/inline.ts';
import { counted } from '../../text/words.ts';
import { besidePage, profilePage, rootPages, wayFrom } from '../address.ts';
import type { Catalogue } from '../catalogue.ts';
import type { SiteFile } from '../site-file.ts';
import { documentPage } from '../site-page.ts';

/** Pairings without a table that stand on one page; of more each machine has a page of its own. */
const mostOnOnePage = 500;

const title = 'Pairings without a table';

/** The pairings of which no table follows, each with the reason. */
export function* untabledFiles({ omitted, isCut }: Catalogue): Generator<SiteFile> {
  const answer = `${answerFor(omitted.length)}${isCut ? cutText : ''}`;
  if (omitted.length <= mostOnOnePage)
    return yield untabledPage(
      rootPages.untabled,
      title,
      answer,
      omitted.length === 0 ? [] : [untabledTable(omitted)],
    );
  const byMachine = groupedBy(omitted, ({ machine }) => machine);
  yield untabledPage(rootPages.untabled, title, answer, [machineTable(byMachine)]);
  for (const [machine, own] of byMachine)
    yield untabledPage(pageOf(machine), `${title}: ${machine}`, answerFor(own.length), [untabledTable(own)]);
}

function answerFor(count: number): string {
  return `${counted(count, 'pairing')} of which no table follows, with the reason.`;
}

const cutText =
  ' Those whose machine and filament no trial and no limit names together have no page: the question on the first page names them where they may hold what is asked.';

function untabledPage(path: string, heading: string, answer: string, blocks: readonly Block[]): SiteFile {
  return documentPage(path, heading, { title: heading, answer, blocks });
}

/** Under a name that no id of a profile has. */
function pageOf(machine: string): string {
  return besidePage(profilePage('machine', machine), '--untabled.html');
}

function machineTable(byMachine: ReadonlyMap<string, Catalogue['omitted']>): Table {
  const to = wayFrom(rootPages.untabled);
  const columns = [...rowNames('Machine'), ...leftColumns('Pairings without a table')];
  const rows = [...byMachine].map(([machine, own]) => [
    [link(machine, to(pageOf(machine)))],
    String(own.length),
  ]);
  return table(columns, rows, { caption: 'Pairings that were left out, by machine', name: 'listing' });
}

function untabledTable(omitted: Catalogue['omitted']): Table {
  const columns = [...rowNames('Machine', 'Nozzle', 'Filament'), ...leftColumns('House rules', 'Why')];
  const rows = omitted.map(({ machine, nozzle, filament, policy, reason }) => [
    machine,
    nozzle,
    filament,
    policy,
    reason,
  ]);
  return table(columns, rows, { caption: 'Pairings that were left out', name: 'listing' });
}
