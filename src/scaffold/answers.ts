import { parse } from 'yaml';
import { isObject, type Path } from '../registry/shape.ts';
import { type Field, fieldAt } from './field.ts';

/** What is known of a new document: a tree of plain values, in the form of the document itself. */
export type Answers = Readonly<Record<string, unknown>>;

/** Path in the document of a way of keys such as `hotEnds.nozzles.id`: an entry that is not numbered is the first. */
export function pathOfWay(fields: readonly Field[], way: readonly string[]): Path {
  const path: (string | number)[] = [];
  let inner = fields;
  for (const [index, step] of way.entries()) {
    if (/^\d+$/.test(step)) {
      path.push(Number(step));
      continue;
    }
    path.push(step);
    const field = inner.find(({ key }) => key === step);
    inner = field?.fields ?? [];
    const next = way[index + 1];
    const isList = field?.form === 'groups' || field?.form === 'statements';
    if (isList && next !== undefined && !/^\d+$/.test(next)) path.push(0);
  }
  return path;
}

/**
 * The value that a text stands for at a field: a number, true or false, a list parted by commas, a whole part of a
 * document in YAML's `{…}` or `[…]`, or for a statement its value, claimed by `sheet`; else the text itself.
 */
export function valueOfText(field: Field, text: string, sheet: string | null): unknown {
  const trimmed = text.trim();
  if (['group', 'groups', 'list', 'statements'].includes(field.form) && /^[[{]/.test(trimmed)) {
    const parsed = parsedFlow(trimmed);
    if (parsed !== null) return parsed;
  }
  if (field.form === 'truth' && /^(?:true|false)$/.test(trimmed)) return trimmed === 'true';
  if (field.form === 'number' && trimmed !== '' && Number.isFinite(Number(trimmed))) return Number(trimmed);
  if (field.form === 'list') return trimmed.split(',').map((part) => part.trim());
  if (field.form === 'statements')
    return [{ value: trimmed, basis: 'claimed', ...(sheet !== null && { source: sheet }) }];
  return trimmed;
}

function parsedFlow(text: string): unknown {
  try {
    return parse(text, { version: '1.2', schema: 'core', maxAliasCount: 0 });
  } catch {
    return null;
  }
}

/** A copy of a tree with one value set; what the path needs on its way is made. */
export function withValue(tree: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const list: readonly unknown[] = Array.isArray(tree) ? tree : [];
    const at = Math.min(step, list.length);
    return [...list.slice(0, at), withValue(list[at], rest, value), ...list.slice(at + 1)];
  }
  const object = isObject(tree) ? tree : {};
  // A key such as __proto__ stays a key.
  return Object.fromEntries([
    ...Object.entries(object).filter(([key]) => key !== step),
    [step, withValue(Object.hasOwn(object, step) ? object[step] : undefined, rest, value)],
  ]);
}

/** The answers with one more. */
export function withAnswer(answers: Answers, path: Path, value: unknown): Answers {
  const tree = withValue(answers, path, value);
  return isObject(tree) ? tree : answers;
}

/** The value at a path, or undefined. */
export function valueAt(tree: unknown, path: Path): unknown {
  let value = tree;
  for (const step of path) {
    if (Array.isArray(value) && typeof step === 'number') value = value[step];
    else if (isObject(value) && Object.hasOwn(value, step)) value = value[step];
    else return undefined;
  }
  return value;
}

/** What a document starts with before anybody has answered: what the schema presets of the keys that it must have. */
export function presets(fields: readonly Field[]): Answers {
  return Object.fromEntries(
    fields.flatMap(({ key, isMandatory, preset }) =>
      isMandatory && preset !== undefined ? [[key, preset] as const] : [],
    ),
  );
}

/** Mandatory keys at the root that no answer covers. */
export function openKeys(fields: readonly Field[], answers: Answers): string[] {
  return fields.flatMap((field) => openWays(field, answers[field.key]));
}

function openWays(field: Field, value: unknown): string[] {
  if (!field.isMandatory && value === undefined) return [];
  if (value === undefined) return [field.key];
  const entries = field.form === 'groups' && Array.isArray(value) ? value : [value];
  if (field.form !== 'group' && field.form !== 'groups') return [];
  return entries.flatMap((entry) =>
    isObject(entry) ? openKeys(field.fields, entry).map((way) => `${field.key}.${way}`) : [field.key],
  );
}

/** The field and path that a way such as `envelope.x` names, or null. */
export function placeOfWay(fields: readonly Field[], way: string): { field: Field; path: Path } | null {
  const steps = way.split('.');
  const field = fieldAt(fields, steps);
  return field === null ? null : { field, path: pathOfWay(fields, steps) };
}
