import { element, type Markup } from '../../../text/html-element.ts';
import { capitalised, wordsOf } from '../../../text/words.ts';
import { inPrint } from '../../../units/in-print.ts';
import { rootPages } from '../../address.ts';
import type { Draft, DraftField } from '../../bench/draft.ts';
import { columnText, placedColumns } from './rows-form.ts';

/** The page of a run before anything is known of its readings. */
export function runMarkup(draft: Draft): string {
  return [
    element('header', { class: 'bench-head' }, [
      element('h2', { tabindex: -1 }, [inPrint(draft.head.title)]),
      element('p', { id: 'bench-keeping', role: 'status' }, []),
      element('p', {}, [element('a', { href: rootPages.bench }, ['Other runs'])]),
      element('p', { id: 'bench-told', role: 'status' }, []),
    ]),
    element('p', { id: 'bench-limit', role: 'status' }, ['No reading yet.']),
    element('div', { id: 'bench-others' }, []),
    element('div', { id: 'bench-advice', role: 'status' }, []),
    element('div', { class: 'bench-body' }, [
      element('div', {}, [
        element('div', { id: 'bench-plot' }, []),
        element('ul', { id: 'bench-warnings', class: 'warning' }, []),
      ]),
      element('div', {}, [
        element('form', { id: 'bench-rows', autocomplete: 'off', 'aria-label': 'Readings' }, []),
        element('form', { id: 'bench-add', class: 'find', 'aria-label': 'Another row' }, [
          ...addMarkup(draft),
          button('add', 'Add row', 'submit'),
          button('undo', 'Undo'),
        ]),
        ...(draft.head.asked.method === 'flowLadder' ? [eventMarkup(draft)] : []),
      ]),
    ]),
    factsMarkup(draft),
    element('section', { 'aria-label': 'Files' }, [
      element('h3', {}, ['Files']),
      element('p', { id: 'bench-copies', class: 'chosen' }, []),
      element('p', { class: 'chosen' }, [
        element('label', { for: 'sheet-file' }, ['A sheet from a file; it can be dropped on the page too: ']),
        element('input', { id: 'sheet-file', type: 'file', accept: '.csv,text/csv' }),
      ]),
      element('div', { id: 'bench-files' }, []),
    ]),
    element('details', { id: 'bench-known' }, [
      element('summary', {}, ['Already measured for this pairing']),
      element('div', {}, []),
    ]),
    element('details', { id: 'bench-plan' }, [
      element('summary', {}, ['The plan: what to expect, how to go about it, cautions']),
      element('div', {}, []),
    ]),
  ]
    .map(({ markup }) => markup)
    .join('\n');
}

/** A button that says what it does by `data-act`. */
export function button(act: string, text: string, type: 'button' | 'submit' = 'button'): Markup {
  return element('button', { type, 'data-act': act }, [text]);
}

/** Fields for the setting of another row. */
function addMarkup(draft: Draft): Markup[] {
  return placedColumns(draft).given.map((column) =>
    element('span', { class: 'cell' }, [
      element('label', { for: `add-${column.place}` }, [capitalised(columnText(column))]),
      element('input', {
        ...{ id: `add-${column.place}`, name: String(column.place), inputmode: 'decimal', size: 7 },
        autocomplete: 'off',
      }),
    ]),
  );
}

function eventMarkup({ event }: Draft): Markup {
  const options = [
    ['', 'it ran to its end'],
    ['halted', 'the machine halted it'],
    ['stripped', 'the drive stripped the filament'],
  ] as const;
  return element('form', { id: 'bench-event', class: 'find', 'aria-label': 'How it ended' }, [
    element('span', { class: 'cell' }, [
      element('label', { for: 'event-what' }, ['How it ended']),
      element(
        'select',
        { id: 'event-what', name: 'event' },
        options.map(([value, shown]) =>
          element('option', { value, selected: value === (event?.event ?? '') ? true : undefined }, [shown]),
        ),
      ),
    ]),
    element('span', { class: 'cell' }, [
      element('label', { for: 'event-flow' }, ['At the flow, mm³/s']),
      element('input', {
        ...{ id: 'event-flow', name: 'flow', inputmode: 'decimal', size: 7, value: event?.flow ?? '' },
        autocomplete: 'off',
      }),
    ]),
    button('halted', 'It halted here'),
  ]);
}

function factsMarkup({ head, fields }: Draft): Markup {
  const asked = head.fields.filter(({ isFixed }) => !isFixed);
  return element('details', { id: 'bench-facts' }, [
    element('summary', {}, ['Facts of the run: who, batch, conditions, instruments']),
    element('form', { class: 'find', 'aria-label': 'Facts of the run' }, [
      element(
        'div',
        { class: 'facts-form' },
        asked.map((field) => factMarkup(field, fields.get(field.path) ?? '')),
      ),
    ]),
  ]);
}

function factMarkup({ path, example }: DraftField, value: string): Markup {
  const id = `fact-${path}`;
  const hint = `${id}-hint`;
  return element('div', {}, [
    element('label', { for: id }, [fieldWords(path)]),
    element('input', {
      ...{ id, 'data-field': path, value, autocomplete: 'off', enterkeyhint: 'next' },
      'aria-describedby': example === '' ? undefined : hint,
    }),
    ...(example === '' ? [] : [element('small', { id: hint }, [`such as ${inPrint(example)}`])]),
  ]);
}

/** `Nozzle temperature`, `Scale, resolution`. */
function fieldWords(path: string): string {
  const keys = path.split('.').filter((key) => key !== 'conditions');
  return capitalised(keys.map(wordsOf).join(', '));
}
