import { element } from '../../text/html-element.ts';
import { dataPath, rootPages, wayFrom } from '../address.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';
import type { CatalogueData } from '../data/catalogue-data.ts';
import type { Choice } from '../find/choices.ts';
import { mostCompared, stateOf } from '../find/question-address.ts';
import { choiceField, startChoice } from './choice-field.ts';
import { loadScript } from './load-script.ts';
import { loadPairings, pageData } from './page-data.ts';

const to = wayFrom(rootPages.compare);

/** Lets pairings be put beside each other and taken away, by a field that searches all of them; which ones there are the address says. */
export async function startChoosing(section: HTMLElement): Promise<void> {
  await loadScript(dataPath);
  const data = pageData();
  if (data === null || data.policies.length === 0) return;
  section.innerHTML = formMarkup(data);
  section.hidden = false;
  const around = section.querySelector('[data-choice]');
  const policy = section.querySelector<HTMLSelectElement>('select');
  const source = async () =>
    (await loadPairings(policy?.value ?? data.policies[0] ?? ''))?.map(choiceOf) ?? [];
  if (around !== null) startChoice(around, { source, isEmptied: true, choose: (page) => add(page, section) });
  section.addEventListener('click', ({ target }) => {
    const page = target instanceof HTMLElement ? target.dataset.remove : undefined;
    if (page === undefined) return;
    setChosen(chosen().filter((each) => each !== page));
    section.querySelector<HTMLElement>('input[role="combobox"]')?.focus();
  });
  const show = () => showChosen(section);
  addEventListener('hashchange', show);
  show();
}

function formMarkup({ policies }: CatalogueData): string {
  const options = policies.map((policy) => element('option', { value: policy }, [policy]));
  return element('fieldset', {}, [
    element('legend', {}, ['Pairings to compare']),
    ...(policies.length > 1
      ? [
          element('div', {}, [
            element('label', { for: 'add-policy' }, ['House rules']),
            element('select', { id: 'add-policy' }, options),
          ]),
        ]
      : []),
    choiceField('add', 'compare', 'Add a pairing: filament, machine, nozzle'),
    element('ul', { class: 'matches', id: 'compared-now' }),
    element('p', { id: 'compare-told', role: 'status' }),
  ]).markup;
}

function choiceOf({ page, filamentName, machineName, nozzle, filament, machine }: CataloguedPairing): Choice {
  return { id: page, name: `${filamentName} on ${machineName}, ${nozzle} (${filament}, ${machine})` };
}

function chosen(): readonly string[] {
  return stateOf(location.hash).chosen;
}

function add(page: string, section: HTMLElement): void {
  const told = section.querySelector('#compare-told');
  const isFull = chosen().length === mostCompared;
  if (told !== null)
    told.textContent = isFull ? `No more than ${mostCompared} are compared: remove one first.` : '';
  if (!isFull) setChosen([...chosen(), page]);
}

/** What else is asked stays in the address. */
function setChosen(pages: readonly string[]): void {
  const asked = new URLSearchParams(location.hash.slice(1));
  asked.delete('pairing');
  for (const page of new Set(pages)) asked.append('pairing', page);
  location.hash = asked.toString();
}

function showChosen(section: HTMLElement): void {
  const list = section.querySelector('#compared-now');
  if (list === null) return;
  list.innerHTML = chosen()
    .map((page) => {
      const [, policy = '', ...rest] = page.replace(/\.html$/, '').split('/');
      const name = `${rest.join('/')} (${policy})`;
      return element('li', {}, [
        element('a', { href: to(page) }, [name]),
        element('button', { type: 'button', 'data-remove': page, 'aria-label': `remove ${name}` }, [
          'Remove',
        ]),
      ]).markup;
    })
    .join('\n');
}
