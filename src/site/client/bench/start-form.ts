import { element, type Markup } from '../../../text/html-element.ts';
import { wordsOf } from '../../../text/words.ts';
import type { BenchData } from '../../bench/bench-data.ts';
import type { RunAsked } from '../../bench/draft.ts';

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
      field(
        'machine',
        'Machine',
        data.machines.map(({ id, name }) => [id, `${name} (${id})`]),
      ),
      field('nozzle', 'Nozzle', []),
      field(
        'filament',
        'Filament',
        data.filaments.map(({ id, name }) => [id, `${name} (${id})`]),
      ),
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
  const follow = () => followChoices(form, data);
  form.addEventListener('change', follow);
  follow();
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void begin(askedBy(form)).then((problem) => {
      const told = section.querySelector('#start-problem');
      if (told !== null) told.textContent = problem ?? '';
    });
  });
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
