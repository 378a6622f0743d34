import { element, type Markup } from '../../../text/html-element.ts';
import { wordsOf } from '../../../text/words.ts';
import type { BenchData } from '../../bench/bench-data.ts';
import type { RunAsked } from '../../bench/draft.ts';
import type { Choice } from '../../find/choices.ts';
import { choiceField, startChoice } from '../choice-field.ts';

type Option = readonly [value: string, shown: string];

/** The form that begins a run. `begin` is handed what was chosen, and says what is wrong with it, or nothing. */
export function showStart(
  section: HTMLElement,
  data: BenchData,
  begin: (asked: RunAsked) => Promise<string | null>,
): void {
  section.innerHTML = element('form', { class: 'find', 'aria-label': 'New run' }, [
    element('fieldset', {}, [
      element('legend', {}, ['New run']),
      field(
        'method',
        'Method',
        data.methods.map(({ name }) => [name, wordsOf(name)]),
      ),
      oneOf('machine', 'Machine', data.machines),
      field('nozzle', 'Nozzle', []),
      oneOf('filament', 'Filament', data.filaments),
      field('subject', 'What is raised or checked', []),
      field('read', 'What is read', []),
      element('div', {}, [
        element('label', { for: 'start-temperature' }, ['Nozzle temperature, °C']),
        element('input', {
          ...{ id: 'start-temperature', name: 'temperature', inputmode: 'decimal', size: 6 },
          ...{ autocomplete: 'off', placeholder: 'as planned' },
        }),
      ]),
      field(
        'policy',
        'House rules',
        data.policies.map((id) => [id, id]),
      ),
    ]),
    element('p', { id: 'start-problem', role: 'alert' }, []),
    element('p', { class: 'ends' }, [element('button', { type: 'submit' }, ['Begin'])]),
  ]).markup;
  section.hidden = false;
  const form = section.querySelector('form');
  if (form === null) return;
  const asked = new URLSearchParams(location.hash.slice(1));
  startOneOf(form, 'machine', data.machines, asked);
  startOneOf(form, 'filament', data.filaments, asked);
  const follow = () => followChoices(form, data);
  form.addEventListener('change', follow);
  follow();
  choose(form, 'nozzle', asked.get('nozzle'));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void begin(askedBy(form)).then((problem) => {
      const told = section.querySelector('#start-problem');
      if (told !== null) told.textContent = problem ?? '';
    });
  });
}

/** Choices up to which the browser's own list is the quickest; more are searched. */
const mostListed = 30;

function oneOf(name: string, text: string, choices: readonly Choice[]): Markup {
  return choices.length > mostListed
    ? choiceField(name, 'start', text)
    : field(
        name,
        text,
        choices.map((choice): Option => [choice.id, shownName(choice)]),
      );
}

function shownName({ id, name }: Choice): string {
  return `${name} (${id})`;
}

/** The first one is chosen, unless the address asks for another. */
function startOneOf(
  form: HTMLFormElement,
  name: string,
  choices: readonly Choice[],
  asked: URLSearchParams,
): void {
  const around = form.querySelector(`[data-choice="${name}"]`);
  if (around === null) {
    choose(form, name, asked.get(name));
    return;
  }
  const shown = choices.map((choice) => ({ id: choice.id, name: shownName(choice) }));
  const chosen = shown.find(({ id }) => id === asked.get(name)) ?? shown[0];
  startChoice(around, { source: () => Promise.resolve(shown), ...(chosen !== undefined && { chosen }) });
}

/** Chooses in a list what an address asks for, if the list has it. */
function choose(form: HTMLFormElement, name: string, id: string | null): void {
  const select = form.querySelector<HTMLSelectElement>(`select#start-${name}`);
  const option = [...(select?.options ?? [])].find(({ value }) => value === id);
  if (option !== undefined) option.selected = true;
}

function field(name: string, text: string, options: readonly Option[]): Markup {
  return element('div', { 'data-of': name }, [
    element('label', { for: `start-${name}` }, [text]),
    element('select', { id: `start-${name}`, name }, options.map(optionMarkup)),
  ]);
}

function optionMarkup([value, shown]: Option): Markup {
  return element('option', { value }, [shown]);
}

/** The nozzles are those of the machine; what else is to be chosen depends on the method. */
function followChoices(form: HTMLFormElement, { machines, methods }: BenchData): void {
  const { machine, method } = askedBy(form);
  const nozzles = machines.find(({ id }) => id === machine)?.nozzles ?? [];
  fill(form, 'nozzle', [['', 'as planned'], ...nozzles.map(({ id, name }): Option => [id, name])]);
  const { subjects = [], reads = [] } = methods.find(({ name }) => name === method) ?? {};
  fill(
    form,
    'subject',
    subjects.map((name): Option => [name, wordsOf(name)]),
  );
  fill(
    form,
    'read',
    reads.map((name): Option => [name, wordsOf(name)]),
  );
}

function fill(form: HTMLFormElement, name: string, options: readonly Option[]): void {
  const select = form.querySelector<HTMLSelectElement>(`#start-${name}`);
  const around = form.querySelector<HTMLElement>(`[data-of="${name}"]`);
  if (select === null || around === null) return;
  const markup = options.map((option) => optionMarkup(option).markup).join('');
  around.hidden = options.length === 0;
  const shown = [...select.options].map(({ value }) => value).join(' ');
  if (shown !== options.map(([value]) => value).join(' ')) select.innerHTML = markup;
}

function askedBy(form: HTMLFormElement): RunAsked {
  const fields = new FormData(form);
  const text = (name: string) => {
    const value = fields.get(name);
    return typeof value === 'string' && value.trim() !== '' ? value.trim() : null;
  };
  const temperature = text('temperature');
  return {
    machine: text('machine') ?? '',
    filament: text('filament') ?? '',
    // The choices are those that the data name.
    method: (text('method') ?? '') as RunAsked['method'],
    nozzle: text('nozzle'),
    subject: text('subject'),
    policy: text('policy'),
    read: text('read'),
    temperature: temperature === null ? null : withUnit(temperature.replace(',', '.')),
  };
}

/** The field says the unit; whoever writes it too is understood. */
function withUnit(temperature: string): string {
  return /^[\d.]+$/.test(temperature) ? `${temperature} Cel` : temperature;
}
