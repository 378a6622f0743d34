import type { MethodName } from '../../bench/method-facts.ts';

/** A column of the sheet; those that are given are set, the others are read. */
export interface DraftColumn {
  readonly name: string;
  /** Unit code of its numbers. */
  readonly unit: string;
  readonly isGiven: boolean;
  /** Whether the method can do without it. */
  readonly isOptional: boolean;
}

/** Something that a trial says besides its readings, as the form asks for it. */
export interface DraftField {
  /** Keys that lead to it, with points between them: `conditions.nozzleTemperature`. */
  readonly path: string;
  /** What stands there until somebody writes something else. */
  readonly preset: string;
  /** What could stand there; empty where the preset shows it. */
  readonly example: string;
  readonly isNumber: boolean;
  /** Whether it follows from the plan, so that nobody is asked. */
  readonly isFixed: boolean;
}

/** What a run is planned for, as the form says it; null where it says nothing. */
export interface RunAsked {
  readonly machine: string;
  readonly nozzle: string | null;
  readonly filament: string;
  readonly method: MethodName;
  /** Setting that a settingLadder raises, or part of the machine that a setPointCheck checks. */
  readonly subject: string | null;
  /** Quantity with its unit. */
  readonly temperature: string | null;
  /** House rules that say how narrow the interval shall be. */
  readonly policy: string | null;
  /** The column that is read instead of the plan's, where the method has a choice: a size instead of a grade. */
  readonly read: string | null;
}

/** What a draft was begun with; only a sheet that is dropped changes its columns. */
interface DraftHead {
  readonly title: string;
  readonly asked: RunAsked;
  readonly columns: readonly DraftColumn[];
  /** Headings of what helps to set a row. */
  readonly hints: readonly string[];
  readonly fields: readonly DraftField[];
}

/** One row of the sheet as it is typed: a text a column, in the order of the columns. */
export interface DraftRow {
  readonly cells: readonly string[];
  /** What helps to set it, one text a heading. */
  readonly hints: readonly string[];
  readonly note: string;
  readonly isRemoved: boolean;
}

/** What ended the run of a flow ladder, and at which flow, as it is typed. */
export interface DraftEvent {
  readonly event: 'halted' | 'stripped';
  readonly flow: string;
}

/** One thing that was typed. Each is kept by itself, so that two pages that write one draft lose nothing of each other. */
export type Entry = EntryStamp & EntryContent;

export type EntryContent =
  | { readonly part: 'head'; readonly value: DraftHead }
  | { readonly part: 'field'; readonly name: string; readonly value: string }
  | { readonly part: 'row'; readonly name: string; readonly value: DraftRow }
  | { readonly part: 'event'; readonly value: DraftEvent | null };

interface EntryStamp {
  readonly draft: string;
  /** When it was typed, milliseconds since 1970; of two with one key the later counts. */
  readonly time: number;
  /** The page that it was typed on, which decides between two of the same millisecond. */
  readonly by: string;
}

/** What an entry replaces: the earlier one with the same key. */
export function keyOfEntry(entry: EntryContent): string {
  return entry.part === 'row' || entry.part === 'field' ? `${entry.part}/${entry.name}` : entry.part;
}

/** Whether an entry counts against another one with its key. */
export function isNewer(entry: EntryStamp, than: EntryStamp | undefined): boolean {
  if (than === undefined || entry.time !== than.time) return than === undefined || entry.time > than.time;
  return entry.by > than.by;
}

/** A row with its name, by which rows are ordered. */
export interface NamedRow extends DraftRow {
  readonly name: string;
}

/** A trial while it is typed. */
export interface Draft {
  readonly id: string;
  readonly head: DraftHead;
  /** By their paths: what was typed, else the preset. */
  readonly fields: ReadonlyMap<string, string>;
  readonly rows: readonly NamedRow[];
  readonly event: DraftEvent | null;
  /** When something was last typed. */
  readonly changed: number;
}

/** The draft that entries make, in whatever order they come; null without its head. */
export function draftOf(entries: Iterable<Entry>): Draft | null {
  const newest = new Map<string, Entry>();
  for (const entry of entries) {
    const key = keyOfEntry(entry);
    if (isNewer(entry, newest.get(key))) newest.set(key, entry);
  }
  const all = [...newest.values()];
  const head = all.find((entry) => entry.part === 'head');
  if (head === undefined) return null;
  const typed = new Map(all.flatMap((entry) => (entry.part === 'field' ? [[entry.name, entry.value]] : [])));
  const rows = all.flatMap((entry) => (entry.part === 'row' ? [{ name: entry.name, ...entry.value }] : []));
  return {
    id: head.draft,
    head: head.value,
    fields: new Map(head.value.fields.map(({ path, preset }) => [path, typed.get(path) ?? preset])),
    rows: rows.filter(({ isRemoved }) => !isRemoved).sort((one, other) => (one.name < other.name ? -1 : 1)),
    event: all.find((entry) => entry.part === 'event')?.value ?? null,
    changed: Math.max(...all.map(({ time }) => time)),
  };
}

/** A name for the row at a place, counted from 0; names order as places do. */
export function rowName(place: number): string {
  return String(place).padStart(6, '0');
}

/** The name of a row that goes behind all that there ever were, removed ones too. */
export function nextRowName(entries: Iterable<Entry>): string {
  let last = -1;
  for (const entry of entries) if (entry.part === 'row') last = Math.max(last, Number(entry.name));
  return rowName(last + 1);
}
