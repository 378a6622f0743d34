import { searchPath } from '../address.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';
import type { CatalogueData } from '../data/catalogue-data.ts';
import type { SearchData } from '../data/search-data.ts';
import { findPairings } from '../find/find-pairings.ts';
import { type FindState, fragmentOf, stateOf } from '../find/question-address.ts';
import { type SearchIndex, searchEntries, searchEntriesOf, searchIndex } from '../find/search.ts';
import { untestedPairings } from '../find/untested-pairings.ts';
import { answerMarkup, countText, fillList, isAnyAsked, matchesMarkup, shownAtFirst } from './find-answer.ts';
import { loadingOnce, loadScript } from './load-script.ts';
import { loadPairings } from './page-data.ts';

declare global {
  var meltboundsSearch: SearchData | undefined;
}

/** What the first page shows: the form, its list, and what has been loaded for them. */
interface FindPage {
  readonly form: HTMLFormElement;
  readonly list: HTMLElement;
  readonly data: CatalogueData;
  pairings: readonly CataloguedPairing[];
  index: SearchIndex | null;
  /** How many rows are shown of each list. */
  shown: number;
}

/** Lets the first page be searched and asked; all that is asked stands in its address. */
export function startFinding(form: HTMLFormElement, list: HTMLElement, data: CatalogueData): void {
  const page: FindPage = { form, list, data, pairings: [], index: null, shown: shownAtFirst };
  fill(form, location.hash);
  form.hidden = false;
  const asked = () => {
    page.shown = shownAtFirst;
    keep(page);
  };
  form.addEventListener('input', asked);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    list.querySelector('h2')?.focus();
  });
  form.addEventListener('reset', () => setTimeout(asked));
  list.addEventListener('change', () => keep(page));
  list.addEventListener('click', (event) => showMore(event, page));
  addEventListener('hashchange', () => {
    fill(form, location.hash);
    void show(page);
  });
  void show(page);
}

/** What can be searched, loaded when somebody first types; null where it is not there. */
const loadSearch = loadingOnce(async (path: string): Promise<SearchIndex | null> => {
  await loadScript(path);
  const data = globalThis.meltboundsSearch;
  return data === undefined ? null : searchIndex(searchEntriesOf(data));
});

/** What is typed goes into the address, without a step of the history for each letter. */
function keep(page: FindPage): void {
  const asked = new FormData(page.form);
  const fields = new URLSearchParams();
  for (const [name, value] of asked) if (typeof value === 'string' && value !== '') fields.set(name, value);
  for (const each of chosenIn(page.list)) fields.append('pairing', each);
  history.replaceState(null, '', `#${fragmentOf(stateOf(fields.toString()))}`);
  void show(page);
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

/** Shows what the address and the form ask, once the data for it are there; what was asked meanwhile counts. */
async function show(page: FindPage): Promise<void> {
  const state = stateOf(location.hash);
  const policy = policyIn(page.form);
  const [pairings, index] = await Promise.all([
    loadPairings(policy),
    state.typed.trim() === '' ? page.index : loadSearch(searchPath),
  ]);
  if (policyIn(page.form) !== policy) return;
  page.index = index;
  if (pairings === null) return tell(page.form, 'The data of these house rules cannot be loaded.');
  page.pairings = pairings;
  const now = stateOf(location.hash);
  showState(page, { ...now, question: { ...now.question, policy } });
}

function policyIn(form: HTMLFormElement): string {
  const policy = new FormData(form).get('policy');
  return typeof policy === 'string' ? policy : '';
}

function tell(form: HTMLFormElement, text: string): void {
  const count = form.querySelector('#count');
  if (count !== null) count.textContent = text;
}

function showState({ form, list, data, pairings, index, shown }: FindPage, state: FindState): void {
  const { typed, question } = state;
  const matches = form.querySelector('#matches');
  if (matches !== null)
    matches.innerHTML =
      typed.trim() === '' || index === null ? '' : matchesMarkup(searchEntries(index, typed));
  const focused = document.activeElement instanceof HTMLInputElement ? document.activeElement.value : '';
  const answer = findPairings(pairings, question);
  const untested = isAnyAsked(question) ? untestedPairings(data, pairings, question) : [];
  list.innerHTML = answerMarkup(answer, untested, state, shown);
  tell(form, countText(answer, isAnyAsked(question)));
  // The list is new; whoever was on a box of it still is.
  for (const box of list.querySelectorAll<HTMLInputElement>('input')) if (box.value === focused) box.focus();
}

/** The rows behind the first ones, and the list as a file, which is made when it is asked for. */
function showMore(event: Event, page: FindPage): void {
  const { target } = event;
  if (!(target instanceof HTMLElement)) return;
  const state = stateOf(location.hash);
  const question = { ...state.question, policy: policyIn(page.form) };
  if (target instanceof HTMLAnchorElement) fillList(target, findPairings(page.pairings, question));
  const more = target.dataset.more;
  if (more === undefined) return;
  page.shown *= 4;
  showState(page, { ...state, question });
  page.list.querySelector<HTMLElement>(`#${more}`)?.focus();
}
