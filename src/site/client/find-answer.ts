import { formatCsv } from '../../text/csv.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { counted } from '../../text/words.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import { profilePage, rootPages, wayFrom } from '../address.ts';
import type { Answer, FoundPairing, Question } from '../find/find-pairings.ts';
import { type FindState, mostCompared } from '../find/question-address.ts';
import type { SearchEntry } from '../find/search.ts';
import type { UntestedNozzle } from '../find/untested-pairings.ts';
import { pairingTable } from '../pages/pairing-rows.ts';

const to = wayFrom(rootPages.home);

/** Rows of each list that are shown before somebody asks for more: what fits on some screens and is drawn at once. */
export const shownAtFirst = 50;

export function matchesMarkup(found: readonly SearchEntry[]): string {
  const items = found.map(({ name, kind, page }) =>
    element('li', {}, [element('a', { href: to(page) }, [name]), kind]),
  );
  return markupOf(items.length === 0 ? [element('li', {}, ['Nothing is called so.'])] : items);
}

function markupOf(parts: readonly Markup[]): string {
  return parts.map(({ markup }) => markup).join('\n');
}

/** `12 pairings hold all that is asked`. */
export function countText({ found }: Answer, isAsked: boolean): string {
  const count = counted(found.length, 'pairing');
  return isAsked
    ? `${count} ${found.length === 1 ? 'holds' : 'hold'} all that is asked`
    : `${count} with a table`;
}

export function isAnyAsked(question: Question): boolean {
  return Object.entries(question).some(([name, value]) => name !== 'policy' && value !== null);
}

/** What holds, what nearly does, and what may, each list up to so many rows. */
export function answerMarkup(
  answer: Answer,
  untested: readonly UntestedNozzle[],
  { question, chosen }: FindState,
  shown: number,
): string {
  const { found, nearly } = answer;
  const isAsked = isAnyAsked(question);
  return markupOf([
    element('h2', { tabindex: -1, id: 'found' }, [countText(answer, isAsked)]),
    chosenMarkup(found, chosen),
    ...listMarkup(found, 'The largest flow first', 'found', shown, chosen),
    ...(isAsked && nearly.length > 0 ? nearlyMarkup(nearly, shown) : []),
    ...(untested.length > 0 ? untestedMarkup(untested, shown) : []),
  ]);
}

function nearlyMarkup(nearly: readonly FoundPairing[], shown: number): Markup[] {
  const caption = 'These lack one thing only, which stands under "Why"';
  return [
    element('h2', { tabindex: -1, id: 'nearly' }, [
      `${counted(nearly.length, 'pairing')} ${nearly.length === 1 ? 'nearly holds' : 'nearly hold'} it`,
    ]),
    ...listMarkup(nearly, caption, 'nearly', shown, null),
  ];
}

function listMarkup(
  listed: readonly FoundPairing[],
  caption: string,
  name: string,
  shown: number,
  chosen: readonly string[] | null,
): Markup[] {
  if (listed.length === 0) return [];
  return [
    pairingTable(listed.slice(0, shown), caption, to, chosen === null ? null : { chosen }),
    ...moreMarkup(listed.length - shown, name),
  ];
}

/** A button that shows more of a list, which leads back to its heading. */
function moreMarkup(left: number, name: string): Markup[] {
  if (left <= 0) return [];
  const button = element('button', { type: 'button', 'data-more': name }, ['Show more']);
  return [element('p', { class: 'chosen' }, [`${left} more. `, button])];
}

/** Filaments that are named beside a nozzle; the others are counted. */
const mostNamed = 3;

function untestedMarkup(untested: readonly UntestedNozzle[], shown: number): Markup[] {
  const count = untested.reduce((sum, { filaments }) => sum + filaments.length, 0);
  const caption =
    'By what the machine states for the whole family, the largest flow first; nobody has measured these';
  const heading = (text: string) => element('th', { scope: 'col' }, [text]);
  const table = element('table', {}, [
    element('caption', {}, [caption]),
    element('thead', {}, [
      element('tr', {}, ['Machine', 'Nozzle', 'Stated flow', 'Filament to run a ladder with'].map(heading)),
    ]),
    element('tbody', {}, untested.slice(0, shown).map(untestedRow)),
  ]);
  return [
    element('h2', { tabindex: -1, id: 'untested' }, [
      `${counted(count, 'pairing')} would hold it if the limit were measured`,
    ]),
    element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [table]),
    ...moreMarkup(untested.length - shown, 'untested'),
  ];
}

function untestedRow({ machine, nozzle, flow, filaments }: UntestedNozzle): Markup {
  const named = filaments.slice(0, mostNamed).flatMap(({ id, name }, index) => {
    const asked = new URLSearchParams({ machine: machine.id, nozzle: nozzle.id, filament: id });
    const ladder = element('a', { href: `${to(rootPages.bench)}#${asked}` }, [name]);
    return index === 0 ? [ladder] : [', ', ladder];
  });
  const others = filaments.length - mostNamed;
  return element('tr', {}, [
    element('th', { scope: 'row' }, [
      element('a', { href: to(profilePage('machine', machine.id)) }, [machine.name]),
    ]),
    element('td', {}, [nozzle.id]),
    element('td', { class: 'number' }, [`${formatNumber(flow, { decimals: 1 })} ${printedUnit('mm3/s')}`]),
    element('td', {}, [...named, ...(others > 0 ? [` and ${others} more`] : [])]),
  ]);
}

function chosenMarkup(found: readonly FoundPairing[], chosen: readonly string[]): Markup {
  const address = `${to(rootPages.compare)}#${new URLSearchParams(chosen.map((page) => ['pairing', page]))}`;
  const compare =
    chosen.length < 2
      ? element('span', {}, [`Mark two to ${mostCompared} pairings to compare them.`])
      : element('a', { href: address, id: 'to-compare' }, [`Compare ${chosen.length} pairings`]);
  return element('p', { class: 'chosen' }, [
    compare,
    ...(found.length === 0 ? [] : [element('a', { href: '#', download: listName }, ['List (CSV)'])]),
  ]);
}

const listName = 'pairings.csv';

/** Puts the whole list behind the link that asks for it as a file: of thousands it is not made for every letter that is typed. */
export function fillList(link: HTMLAnchorElement, { found }: Answer): void {
  if (link.download === listName)
    link.href = `data:text/csv;charset=utf-8,${encodeURIComponent(foundAsCsv(found))}`;
}

function foundAsCsv(found: readonly FoundPairing[]): string {
  const header = [
    ...['filament', 'machine', 'nozzle', 'temperature [Cel]', 'flow [mm3/s]'],
    ...['low', 'high', 'basis', 'simulated', 'why'],
  ];
  const rows = found.map(({ pairing, limit, reason }) => [
    ...[pairing.filament, pairing.machine, pairing.nozzle, limit.temperature, limit.value],
    ...[limit.interval?.low ?? null, limit.interval?.high ?? null],
    ...[limit.basis, String(limit.isSimulated), reason],
  ]);
  return formatCsv([header, ...rows]);
}
