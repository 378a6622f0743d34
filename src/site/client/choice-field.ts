import { element, type Markup } from '../../text/html-element.ts';
import { type Choice, type FoundChoices, matchingChoices } from '../find/choices.ts';

/** Choices that are shown at once: what a screen holds. More typing leads to the others. */
const mostShown = 30;

/**
 * A field that finds one of many choices by the words in them, since nobody can scroll through thousands: an editable combobox with a list (WAI-ARIA
 * 1.2, combobox). What is chosen stands in a hidden field of the name, which says so by a change. `startChoice` brings it to life.
 */
export function choiceField(name: string, prefix: string, label: string): Markup {
  const id = `${prefix}-${name}`;
  return element('div', { class: 'choice', 'data-choice': name }, [
    element('label', { for: id }, [label]),
    element('input', {
      ...{ id, type: 'text', role: 'combobox', autocomplete: 'off', spellcheck: 'false' },
      ...{ 'aria-expanded': 'false', 'aria-controls': `${id}-list`, 'aria-autocomplete': 'list' },
    }),
    element('input', { type: 'hidden', name }),
    element('ul', { id: `${id}-list`, role: 'listbox', 'aria-label': label, hidden: true }),
    element('p', { class: 'remark', role: 'status' }, []),
  ]);
}

/** What a field chooses among, and what happens then. */
interface ChoiceOptions {
  /** The choices, which may have to be loaded first. */
  readonly source: () => Promise<readonly Choice[]>;
  /** The choice that stands there from the start. */
  readonly chosen?: Choice;
  /** Whether the field is empty again once something has been chosen. */
  readonly isEmptied?: boolean;
  readonly choose?: (id: string) => void;
}

interface ChoiceField extends ChoiceOptions {
  readonly input: HTMLInputElement;
  readonly value: HTMLInputElement;
  readonly list: HTMLElement;
  readonly told: HTMLElement;
  found: FoundChoices;
  current: Choice | null;
  active: number;
}

export function startChoice(around: Element, options: ChoiceOptions): void {
  const input = around.querySelector<HTMLInputElement>('input[role="combobox"]');
  const value = around.querySelector<HTMLInputElement>('input[type="hidden"]');
  const list = around.querySelector<HTMLElement>('ul');
  const told = around.querySelector<HTMLElement>('p');
  if (input === null || value === null || list === null || told === null) return;
  const field: ChoiceField = {
    ...options,
    ...{ input, value, list, told, found: { shown: [], count: 0 }, current: options.chosen ?? null },
    active: -1,
  };
  rest(field);
  input.addEventListener('input', () => void open(field, input.value));
  input.addEventListener('focus', () => input.select());
  input.addEventListener('click', () => void open(field, ''));
  input.addEventListener('keydown', (event) => press(event, field));
  input.addEventListener('blur', () => rest(field));
  // The list must not take the focus: it closes when the field loses it.
  list.addEventListener('pointerdown', (event) => event.preventDefault());
  list.addEventListener('click', ({ target }) => {
    const place = target instanceof Element ? target.closest<HTMLElement>('[data-place]') : null;
    choose(field, field.found.shown[Number(place?.dataset.place ?? -1)]);
  });
}

/** Shows what answers the words in the field. */
async function open(field: ChoiceField, typed: string): Promise<void> {
  const choices = await field.source();
  // While the choices were loaded somebody may have gone on.
  if (document.activeElement !== field.input) return;
  field.found = matchingChoices(choices, typed, mostShown);
  // Whoever has typed means the first; whoever looks through all has none yet.
  field.active = typed.trim() === '' || field.found.count === 0 ? -1 : 0;
  field.list.hidden = field.found.count === 0;
  field.input.setAttribute('aria-expanded', String(field.found.count > 0));
  field.told.textContent = countText(field.found);
  showList(field);
}

function countText({ shown, count }: FoundChoices): string {
  if (count === 0) return 'Nothing is called so.';
  return count > shown.length
    ? `${shown.length} of ${count}: type on to find the others.`
    : `${count} found.`;
}

function showList(field: ChoiceField): void {
  const { list, input, found, active } = field;
  list.innerHTML = found.shown
    .map(({ name }, place) =>
      element(
        'li',
        {
          ...{ id: `${list.id}-${place}`, role: 'option', 'data-place': String(place) },
          'aria-selected': String(place === active),
        },
        [name],
      ),
    )
    .map(({ markup }) => markup)
    .join('\n');
  if (active === -1) input.removeAttribute('aria-activedescendant');
  else input.setAttribute('aria-activedescendant', `${list.id}-${active}`);
  list.children[active]?.scrollIntoView({ block: 'nearest' });
}

function press(event: KeyboardEvent, field: ChoiceField): void {
  const { list, found, active } = field;
  const steps = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (steps !== undefined) {
    event.preventDefault();
    if (list.hidden) return void open(field, '');
    const { length } = found.shown;
    field.active = active === -1 && steps < 0 ? length - 1 : (active + steps + length) % length;
    showList(field);
  } else if (event.key === 'Enter' && !list.hidden) {
    event.preventDefault();
    choose(field, found.shown[active]);
  } else if (event.key === 'Escape') {
    event.preventDefault();
    rest(field);
  }
}

function choose(field: ChoiceField, choice: Choice | undefined): void {
  if (choice === undefined) return;
  field.current = field.isEmptied === true ? null : choice;
  rest(field);
  field.value.dispatchEvent(new Event('change', { bubbles: true }));
  field.choose?.(choice.id);
}

/** The list is closed, and the field says what is chosen, whatever was typed since. */
function rest(field: ChoiceField): void {
  const { input, value, list, told, current } = field;
  list.hidden = true;
  input.setAttribute('aria-expanded', 'false');
  input.removeAttribute('aria-activedescendant');
  input.value = current?.name ?? '';
  value.value = current?.id ?? '';
  told.textContent = '';
}
