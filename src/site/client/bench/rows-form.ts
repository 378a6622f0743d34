import { element, type Markup } from '../../../text/html-element.ts';
import { capitalised, headingWords, wordsOf } from '../../../text/words.ts';
import { printedUnit } from '../../../units/print-symbols.ts';
import type { Draft, DraftColumn, NamedRow } from '../../bench/draft.ts';
import type { RowRemark } from '../../bench/reduce-draft.ts';
import { readTyped } from '../../bench/typed-number.ts';

/** Rows of one setting that stand behind each other. */
interface Setting {
  readonly given: readonly string[];
  readonly hints: readonly string[];
  readonly rows: readonly NamedRow[];
}

/** A column with its place among the cells. */
type PlacedColumn = DraftColumn & { readonly place: number };

/** The rows as a table: one line a setting, with a field for each reading of it. */
export function rowsMarkup(draft: Draft): string {
  const { given, read } = placedColumns(draft);
  const constant = given.slice(1).filter(({ place }) => isConstant(draft, place));
  const lines = settingsOf(draft).map((setting) => settingMarkup(setting, draft, constant));
  const [first] = given;
  const set = first === undefined ? '' : `Set ${columnText(first)}. `;
  const throughout = constant.map(
    (column) =>
      `${capitalised(columnText(column))}: ${draft.rows[0]?.cells[column.place] ?? ''} throughout. `,
  );
  const heads = [first === undefined ? 'Row' : 'Set', 'Read'];
  return element('table', { class: 'bench-rows' }, [
    element('caption', {}, [
      `${set}${throughout.join('')}Type ${read.map(columnText).join(', ')}, with a comma or a point. Enter goes on.`,
    ]),
    element('thead', {}, [
      element(
        'tr',
        {},
        heads.map((head) => element('th', { scope: 'col' }, [head])),
      ),
    ]),
    element('tbody', {}, lines),
  ]).markup;
}

/** What the table is made for; another one has to be made when it is another. */
export function shapeOfRows({ head, rows }: Draft): string {
  const given = head.columns.map(({ isGiven }) => isGiven);
  return JSON.stringify([
    head.columns,
    rows.map(({ name, cells }) => [name, cells.filter((_, i) => given[i])]),
  ]);
}

/** Brings the fields up to date, but for the one that somebody is in, and marks what is wrong. */
export function updateRows(form: HTMLElement, draft: Draft, remarks: readonly RowRemark[]): void {
  const rows = new Map(draft.rows.map((row) => [row.name, row]));
  for (const input of form.querySelectorAll<HTMLInputElement>('input[data-row]')) {
    const { row: name = '', place = '' } = input.dataset;
    const cell = rows.get(name)?.cells[Number(place)] ?? '';
    if (input !== document.activeElement && input.value !== cell) input.value = cell;
    const isWrong = readTyped(input.value).kind === 'other';
    const told = remarks.filter(({ row }) => row === name);
    input.setAttribute('aria-invalid', String(isWrong || told.length > 0));
  }
  for (const place of form.querySelectorAll<HTMLElement>('[data-remarks]')) {
    const names = (place.dataset.remarks ?? '').split(' ');
    const wrong = names.filter((name) =>
      (rows.get(name)?.cells ?? []).some((cell) => readTyped(cell).kind === 'other'),
    );
    const texts = [
      ...(wrong.length === 0 ? [] : ['This is no number.']),
      ...remarks.filter(({ row }) => row !== null && names.includes(row)).map(({ text }) => text),
    ];
    const text = [...new Set(texts)].join(' ');
    if (place.textContent !== text) place.textContent = text;
  }
}

export function placedColumns({ head }: Draft): {
  readonly given: readonly PlacedColumn[];
  readonly read: readonly PlacedColumn[];
} {
  const placed = head.columns.map((column, place) => ({ ...column, place }));
  return {
    given: placed.filter(({ isGiven }) => isGiven),
    read: placed.filter(({ isGiven }) => !isGiven),
  };
}

/** `extruded mass, g`. */
export function columnText({ name, unit }: DraftColumn): string {
  const printed = printedUnit(unit);
  return printed === '' ? wordsOf(name) : `${wordsOf(name)}, ${printed}`;
}

/** The setting of a row in words: `commanded flow 30 mm³/s`. */
export function settingText(draft: Draft, name: string): string {
  const row = draft.rows.find((each) => each.name === name);
  const [first] = placedColumns(draft).given;
  const cell = row?.cells[first?.place ?? 0] ?? '';
  const place = draft.rows.findIndex((each) => each.name === name) + 1;
  return first === undefined
    ? `row ${place}`
    : `${wordsOf(first.name)} ${cell} ${printedUnit(first.unit)}`.trim();
}

function settingsOf(draft: Draft): Setting[] {
  const { given } = placedColumns(draft);
  const settings: { given: string[]; hints: readonly string[]; rows: NamedRow[] }[] = [];
  for (const row of draft.rows) {
    const cells = given.map(({ place }) => row.cells[place] ?? '');
    const last = settings.at(-1);
    if (given.length > 0 && last?.given.join('\n') === cells.join('\n')) last.rows.push(row);
    else settings.push({ given: cells, hints: row.hints, rows: [row] });
  }
  return settings;
}

/** Whether all rows have the same there, so that it need be said only once. */
function isConstant({ rows }: Draft, place: number): boolean {
  return new Set(rows.map(({ cells }) => cells[place])).size === 1;
}

function settingMarkup(
  { given, hints, rows }: Setting,
  draft: Draft,
  constant: readonly PlacedColumn[],
): Markup {
  const columns = placedColumns(draft);
  const [first = `${Number(rows[0]?.name ?? 0) + 1}`] = given;
  const words = columns.given.map((column, index) => `${columnText(column)} ${given[index] ?? ''}`);
  const told = words.slice(1).filter((_, index) => {
    const column = columns.given[index + 1];
    return !constant.some(({ place }) => place === column?.place);
  });
  const more = [...told, ...hints.map((hint, index) => hintText(draft.head.hints[index] ?? '', hint))];
  return element('tr', {}, [
    element('th', { scope: 'row' }, [first]),
    element('td', {}, [
      element(
        'div',
        { class: 'cells' },
        rows.flatMap((row, index) => {
          const number = rows.length > 1 ? ` ${index + 1}` : '';
          return rowMarkup(row, columns.read, { setting: words.join(', '), number });
        }),
      ),
      ...(more.length === 0 ? [] : [element('small', {}, [more.join(' · ')])]),
      element('p', { class: 'remark', 'data-remarks': rows.map(({ name }) => name).join(' ') }, []),
    ]),
  ]);
}

/** `feed 13.30 mm/s`: the last word of a heading is the unit. */
function hintText(heading: string, hint: string): string {
  const [, words = heading, unit = ''] = /^(.+) (\S+)$/.exec(heading) ?? [];
  return `${words} ${hint} ${unit}`.trim();
}

function rowMarkup(
  { name, cells }: NamedRow,
  read: readonly PlacedColumn[],
  { setting, number }: { readonly setting: string; readonly number: string },
): Markup[] {
  return read.map((column) => {
    const id = `cell-${name}-${column.place}`;
    const short = (read.length > 1 ? headingWords(column.name) : 'Reading') + number;
    return element('span', { class: 'cell' }, [
      element('label', { for: id }, [short]),
      element('input', {
        ...{ id, 'data-row': name, 'data-place': column.place, value: cells[column.place] ?? '' },
        ...{ inputmode: 'decimal', enterkeyhint: 'next', autocomplete: 'off', size: 7 },
        'aria-label': `${short}: ${columnText(column)}, at ${setting}`,
      }),
    ]);
  });
}
