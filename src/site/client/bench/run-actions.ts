import type { DraftEvent, DraftRow, EntryContent } from '../../bench/draft.ts';
import type { DraftFile } from '../../bench/judge-draft.ts';
import type { NextStep } from '../../bench/plan-draft.ts';
import type { LiveDraft } from './live-draft.ts';
import { placedColumns } from './rows-form.ts';

/** What the fields and buttons of a run bring about. */
export interface RunActions {
  readonly live: LiveDraft;
  readonly type: (contents: readonly EntryContent[]) => void;
  readonly tell: (text: string) => void;
  readonly undo: () => void;
  readonly next: () => NextStep | null;
  readonly files: () => readonly DraftFile[];
  readonly drop: (bytes: Uint8Array) => Promise<void>;
}

/** Listens to the fields and buttons of a run. */
export function startActions(section: HTMLElement, actions: RunActions): void {
  section.oninput = ({ target }) => {
    if (target instanceof HTMLInputElement) typed(target, actions);
    if (target instanceof HTMLElement && target.closest('#bench-event') !== null) typeEvent(section, actions);
  };
  section.onchange = ({ target }) => {
    if (target instanceof HTMLInputElement && target.id === 'sheet-file') void dropped(target.files, actions);
  };
  section.onsubmit = (event) => {
    event.preventDefault();
    if (event.target instanceof HTMLFormElement && event.target.id === 'bench-add')
      addRow(event.target, actions);
  };
  section.onclick = (event) => {
    const { target } = event;
    if (target instanceof HTMLElement) act(target, section, actions);
  };
  section.onkeydown = (event) => {
    if (event.key === 'Enter' && event.target instanceof HTMLInputElement && isWalked(event.target)) {
      event.preventDefault();
      walk(section, event.target, event.shiftKey ? -1 : 1);
    }
  };
  section.ondragover = (event) => event.preventDefault();
  section.ondrop = (event) => {
    event.preventDefault();
    void dropped(event.dataTransfer?.files ?? null, actions);
  };
}

function typed(input: HTMLInputElement, { live, type }: RunActions): void {
  const { row: name, place, field } = input.dataset;
  if (field !== undefined) type([{ part: 'field', name: field, value: input.value }]);
  const row = live.draft().rows.find((each) => each.name === name);
  if (name === undefined || row === undefined) return;
  const { name: _, ...value } = row;
  const cells = value.cells.map((cell, index) => (index === Number(place) ? input.value : cell));
  type([{ part: 'row', name, value: { ...value, cells } }]);
}

function typeEvent(section: HTMLElement, { type }: RunActions): void {
  const what = section.querySelector<HTMLSelectElement>('#event-what')?.value ?? '';
  const flow = section.querySelector<HTMLInputElement>('#event-flow')?.value ?? '';
  const value: DraftEvent | null = what === 'halted' || what === 'stripped' ? { event: what, flow } : null;
  type([{ part: 'event', value }]);
}

/** Fields that Enter leads through: readings, and facts. */
function isWalked({ dataset }: HTMLInputElement): boolean {
  return dataset.row !== undefined || dataset.field !== undefined;
}

/** Goes to the next field of its kind, as Tab would. */
function walk(section: HTMLElement, from: HTMLInputElement, by: 1 | -1): void {
  const kind = from.dataset.row === undefined ? 'input[data-field]' : 'input[data-row]';
  const fields = [...section.querySelectorAll<HTMLInputElement>(kind)];
  const to = fields[fields.indexOf(from) + by];
  to?.focus();
  to?.select();
}

function act(target: HTMLElement, section: HTMLElement, actions: RunActions): void {
  const { act: what, path } = target.dataset;
  if (what === 'undo') actions.undo();
  if (what === 'halted') haltedHere(section, actions);
  if (what === 'next') addNext(section, actions);
  if (what === 'copy' || what === 'copy-and-open') void copy(path, actions);
}

async function copy(path: string | undefined, { files, tell }: RunActions): Promise<void> {
  const file = files().find((each) => each.path === path);
  if (file === undefined) return;
  try {
    await navigator.clipboard.writeText(file.text);
    tell(`Copied: ${file.path}.`);
  } catch {
    tell(`The browser does not let this page copy. Download ${file.path} instead.`);
  }
}

/** A row with the setting that stands in the fields, else that of the last row. */
function addRow(form: HTMLFormElement, actions: RunActions): void {
  const { live } = actions;
  const draft = live.draft();
  const last = draft.rows.at(-1);
  const cells = draft.head.columns.map(({ isGiven }, place) => {
    const typedCell = form.querySelector<HTMLInputElement>(`#add-${place}`)?.value.trim() ?? '';
    return isGiven ? typedCell || (last?.cells[place] ?? '') : '';
  });
  put(cells, [], form, actions);
}

function addNext(section: HTMLElement, actions: RunActions): void {
  const next = actions.next();
  if (next?.given == null) return;
  const { columns } = actions.live.draft().head;
  const settings = [...next.given];
  const cells = columns.map(({ isGiven }) => (isGiven ? (settings.shift() ?? '') : ''));
  put(cells, next.hints, section, actions);
}

function put(
  cells: readonly string[],
  hints: readonly string[],
  within: HTMLElement,
  { live, type }: RunActions,
): void {
  const name = live.nextRow();
  const value: DraftRow = { cells, hints, note: '', isRemoved: false };
  type([{ part: 'row', name, value }]);
  within.ownerDocument.querySelector<HTMLInputElement>(`input[data-row="${name}"]`)?.focus();
}

/** The run ended at the flow of the row that was typed last. */
function haltedHere(section: HTMLElement, actions: RunActions): void {
  const draft = actions.live.draft();
  const { given, read } = placedColumns(draft);
  const begun = draft.rows.filter(({ cells }) =>
    read.some(({ place }) => (cells[place] ?? '').trim() !== ''),
  );
  const flow = begun.at(-1)?.cells[given[0]?.place ?? 0] ?? '';
  const what = section.querySelector<HTMLSelectElement>('#event-what');
  const field = section.querySelector<HTMLInputElement>('#event-flow');
  if (what === null || field === null) return;
  what.value = 'halted';
  field.value = flow;
  typeEvent(section, actions);
  field.focus();
}

async function dropped(files: FileList | null, { drop }: RunActions): Promise<void> {
  const [file] = files ?? [];
  if (file !== undefined) await drop(new Uint8Array(await file.arrayBuffer()));
}
