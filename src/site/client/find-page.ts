import { formatCsv } from '../../text/csv.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { counted } from '../../text/words.ts';
import { rootPages, wayFrom } from '../address.ts';
import type { CatalogueData } from '../data/catalogue-data.ts';
import { type Answer, type FoundPairing, findPairings, type Question } from '../find/find-pairings.ts';
import { type FindState, fragmentOf, mostCompared, stateOf } from '../find/question-address.ts';
import { type SearchIndex, searchEntries, searchIndex } from '../find/search.ts';
import { pairingTable } from '../pages/pairing-rows.ts';

const to = wayFrom(rootPages.home);

/** Lets the first page be searched and asked; all that is asked stands in its address. */
export function startFinding(form: HTMLFormElement, list: HTMLElement, data: CatalogueData): void {
  const index = searchIndex(data.entries);
  const show = () => showState(form, list, data, index);
  fill(form, location.hash);
  form.hidden = false;
  form.addEventListener('input', () => keep(form, list, show));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    list.querySelector('h2')?.focus();
  });
  form.addEventListener('reset', () => setTimeout(() => keep(form, list, show)));
  list.addEventListener('change', () => keep(form, list, show));
  addEventListener('hashchange', () => {
    fill(form, location.hash);
    show();
  });
  show();
}

/** What is typed goes into the address, without a step of the history for each letter. */
function keep(form: HTMLFormElement, list: HTMLElement, show: () => void): void {
  const asked = new FormData(form);
  const fields = new URLSearchParams();
  for (const [name, value] of asked) if (typeof value === 'string' && value !== '') fields.set(name, value);
  for (const page of chosenIn(list)) fields.append('pairing', page);
  history.replaceState(null, '', `#${fragmentOf(stateOf(fields.toString()))}`);
  show();
}

function chosenIn(list: HTMLElement): string[] {
  const shown = [...list.querySelectorAll<HTMLInputElement>('input[name="pairing"]')];
  const hidden = stateOf(location.hash).chosen.filter((page) => !shown.some(({ value }) => value === page));
  return [...hidden, ...shown.filter(({ checked }) => checked).map(({ value }) => value)];
}

function fill(form: HTMLFormElement, fragment: string): void {
  const { typed, question } = stateOf(fragment);
  for (const control of form.elements) {
    if (!(control instanceof HTMLInputElement || control instanceof HTMLSelectElement)) continue;
    if (control.name === 'search') control.value = typed;
    else setValue(control, new Map<string, unknown>(Object.entries(question)).get(control.name));
  }
}

function setValue(control: HTMLInputElement | HTMLSelectElement, value: unknown): void {
  if (value !== null && value !== undefined) control.value = String(value);
  else if (control instanceof HTMLSelectElement) control.selectedIndex = 0;
  else control.value = '';
}

function showState(form: HTMLFormElement, list: HTMLElement, data: CatalogueData, index: SearchIndex): void {
  const state = stateOf(location.hash);
  const policy = new FormData(form).get('policy');
  const question = { ...state.question, policy: typeof policy === 'string' ? policy : null };
  const matches = form.querySelector('#matches');
  if (matches !== null) matches.innerHTML = matchesMarkup(index, state.typed);
  const focused = document.activeElement instanceof HTMLInputElement ? document.activeElement.value : '';
  const answer = findPairings(data.pairings, question);
  list.innerHTML = answerMarkup(answer, { ...state, question });
  const count = form.querySelector('#count');
  if (count !== null) count.textContent = countText(answer, isAnyAsked(question));
  // The list is new; whoever was on a box of it still is.
  for (const box of list.querySelectorAll<HTMLInputElement>('input')) if (box.value === focused) box.focus();
}

function matchesMarkup(index: SearchIndex, typed: string): string {
  if (typed.trim() === '') return '';
  const found = searchEntries(index, typed);
  const items = found.map(({ name, kind, page }) =>
    element('li', {}, [element('a', { href: to(page) }, [name]), kind]),
  );
  return (items.length === 0 ? [element('li', {}, ['Nothing is called so.'])] : items)
    .map(({ markup }) => markup)
    .join('\n');
}

/** `12 pairings hold all that is asked`. */
function countText({ found }: Answer, isAsked: boolean): string {
  const count = counted(found.length, 'pairing');
  return isAsked
    ? `${count} ${found.length === 1 ? 'holds' : 'hold'} all that is asked`
    : `${count} with a table`;
}

function isAnyAsked(question: Question): boolean {
  return Object.entries(question).some(([name, value]) => name !== 'policy' && value !== null);
}

function answerMarkup(answer: Answer, { question, chosen }: FindState): string {
  const { found, nearly } = answer;
  const isAsked = isAnyAsked(question);
  return [
    element('h2', { tabindex: -1 }, [countText(answer, isAsked)]),
    chosenMarkup(found, chosen),
    ...(found.length === 0 ? [] : [pairingTable(found, 'The largest flow first', to, { chosen })]),
    ...(isAsked && nearly.length > 0 ? nearlyMarkup(nearly) : []),
  ]
    .map(({ markup }) => markup)
    .join('\n');
}

function nearlyMarkup(nearly: readonly FoundPairing[]): Markup[] {
  const caption = 'These lack one thing only, which stands under "Why"';
  return [
    element('h2', {}, [
      `${counted(nearly.length, 'pairing')} ${nearly.length === 1 ? 'nearly holds' : 'nearly hold'} it`,
    ]),
    pairingTable(nearly, caption, to),
  ];
}

function chosenMarkup(found: readonly FoundPairing[], chosen: readonly string[]): Markup {
  const csv = `data:text/csv;charset=utf-8,${encodeURIComponent(foundAsCsv(found))}`;
  const address = `${to(rootPages.compare)}#${new URLSearchParams(chosen.map((page) => ['pairing', page]))}`;
  const compare =
    chosen.length < 2
      ? element('span', {}, [`Mark two to ${mostCompared} pairings to compare them.`])
      : element('a', { href: address, id: 'to-compare' }, [`Compare ${chosen.length} pairings`]);
  return element('p', { class: 'chosen' }, [
    compare,
    ...(found.length === 0 ? [] : [element('a', { href: csv, download: 'pairings.csv' }, ['List (CSV)'])]),
  ]);
}

function foundAsCsv(found: readonly FoundPairing[]): string {
  const header = [
    'filament',
    'machine',
    'nozzle',
    'temperature [Cel]',
    'flow [mm3/s]',
    'low',
    'high',
    'basis',
    'simulated',
    'why',
  ];
  const rows = found.map(({ pairing, limit, reason }) => [
    ...[pairing.filament, pairing.machine, pairing.nozzle, limit.temperature, limit.value],
    ...[
      limit.interval?.low ?? null,
      limit.interval?.high ?? null,
      limit.basis,
      String(limit.isSimulated),
      reason,
    ],
  ]);
  return formatCsv([header, ...rows]);
}
