import { isObject } from '../../registry/shape.ts';
import { jsonText } from '../../text/json-text.ts';
import type { Entry } from './draft.ts';

/** Takes an entry of one form to the next. */
type FormStep = (entry: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/**
 * What takes entries to the form of today: the first step those of form 1, and so on. There was no other form yet; a change of
 * `Entry` that older pages have not written brings a step.
 */
const steps: readonly FormStep[] = [];

/** Version of the form in which entries are kept and handed out. */
export const draftForm = steps.length + 1;

const fileFormat = 'meltbounds-draft';

/** An entry of whatever form as one of today's; null for one of a later form, and for what is no entry. */
export function currentEntry(form: unknown, value: unknown, by: readonly FormStep[] = steps): Entry | null {
  if (typeof form !== 'number' || !Number.isInteger(form) || form < 1 || form > by.length + 1) return null;
  if (!isObject(value)) return null;
  const entry = by.slice(form - 1).reduce<Readonly<Record<string, unknown>>>((old, step) => step(old), value);
  return isEntry(entry) ? entry : null;
}

/** Everything that was typed of a draft, as a file that the page reads again. */
export function formatDraftFile(entries: readonly Entry[]): string {
  return jsonText({ format: `${fileFormat}/${draftForm}`, entries });
}

/** The entries in such a file; null for any other text. */
export function readDraftFile(text: string): readonly Entry[] | null {
  const file = parsed(text);
  if (!isObject(file) || typeof file.format !== 'string' || !Array.isArray(file.entries)) return null;
  const [format, form] = file.format.split('/');
  if (format !== fileFormat) return null;
  const entries = file.entries.map((entry) => currentEntry(Number(form), entry));
  const read = entries.filter((entry) => entry !== null);
  return read.length === entries.length && read.some(({ part }) => part === 'head') ? read : null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Files come from anybody: whatever the page goes by must be there, and be what it takes it for. */
function isEntry(
  value: Readonly<Record<string, unknown>>,
): value is Readonly<Record<string, unknown>> & Entry {
  const { draft, time, by, part, name, value: content } = value;
  if (typeof draft !== 'string' || typeof time !== 'number' || typeof by !== 'string') return false;
  switch (part) {
    case 'head':
      return isHead(content);
    case 'field':
      return typeof name === 'string' && typeof content === 'string';
    case 'row':
      return typeof name === 'string' && /^\d{1,6}$/.test(name) && isRow(content);
    case 'event':
      return content === null || (isObject(content) && typeof content.flow === 'string');
    default:
      return false;
  }
}

function isHead(head: unknown): boolean {
  if (!isObject(head) || !isObject(head.asked) || typeof head.title !== 'string') return false;
  const { machine, filament, method } = head.asked;
  const isNamed = [machine, filament, method].every((each) => typeof each === 'string');
  return (
    isNamed &&
    isListOf(head.columns, (column) => typeof column.name === 'string' && typeof column.unit === 'string') &&
    isListOf(head.fields, (field) => typeof field.path === 'string' && typeof field.preset === 'string') &&
    isTexts(head.hints)
  );
}

function isRow(row: unknown): boolean {
  return isObject(row) && isTexts(row.cells) && isTexts(row.hints) && typeof row.note === 'string';
}

function isListOf(list: unknown, holds: (item: Readonly<Record<string, unknown>>) => boolean): boolean {
  return Array.isArray(list) && list.every((item: unknown) => isObject(item) && holds(item));
}

function isTexts(list: unknown): boolean {
  return Array.isArray(list) && list.every((item) => typeof item === 'string');
}
