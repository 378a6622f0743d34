import { shapes } from '../../registry/generated/shapes.ts';
import { scalarText } from '../../registry/yaml/edit-yaml.ts';
import type { Draft, DraftField } from './draft.ts';

/** A value of a trial, with the keys that lead to it. */
interface Stated {
  readonly path: readonly string[];
  readonly text: string;
}

/** The trial file of a draft, with its readings in a sheet beside it; `schema` is the path from the file to its schema. */
export function formatDraftTrial(draft: Draft, sheet: string, schema: string): string {
  const stated = [
    { path: ['kind'], text: 'trial' },
    { path: ['method'], text: draft.head.asked.method },
    ...draft.head.fields.flatMap((field) => statedBy(field, draft)),
    { path: ['observations', 'file'], text: scalarText(sheet) },
  ];
  const keys = Object.keys(shapes.trial.properties);
  const blocks = keys.flatMap((key) => (key === 'events' ? eventLines(draft) : keyLines(key, stated)));
  // A trial without conditions says so: the key must be there.
  const lines = stated.some(({ path }) => path[0] === 'conditions')
    ? blocks
    : blocks.flatMap((line) => (line.startsWith('observations:') ? ['conditions: {}', line] : [line]));
  return `${[`# yaml-language-server: $schema=${schema}`, ...lines].join('\n')}\n`;
}

function statedBy({ path, isNumber }: DraftField, { fields }: Draft): Stated[] {
  const typed = (fields.get(path) ?? '').trim();
  if (typed === '') return [];
  const isPlain = isNumber && /^-?\d+(?:\.\d+)?$/.test(typed);
  const text = path === 'date' ? `'${typed.replaceAll("'", '')}'` : isPlain ? typed : scalarText(typed);
  return [{ path: path.split('.'), text }];
}

/** `key: value`, or a mapping: that of the conditions and the readings over several lines, of an instrument on one. */
function keyLines(key: string, stated: readonly Stated[]): string[] {
  const own = stated.filter(({ path }) => path[0] === key).map(belowKey);
  const [first] = own;
  if (first === undefined) return [];
  if (first.path.length === 0) return [`${key}: ${first.text}`];
  if (key !== 'conditions' && key !== 'observations') return [`${key}: ${inBraces(own)}`];
  return [`${key}:`, ...own.map(({ path, text }) => `  ${path.join('.')}: ${text}`)];
}

function belowKey({ path, text }: Stated): Stated {
  return { path: path.slice(1), text };
}

/** `{resolution: 0.01 g, accuracy: 0.02 g}`, with mappings in it where the paths go deeper. */
function inBraces(stated: readonly Stated[]): string {
  const keys = [...new Set(stated.map(({ path }) => path[0] ?? ''))];
  const pairs = keys.map((key) => {
    const own = stated.filter(({ path }) => path[0] === key).map(belowKey);
    const [first] = own;
    return `${key}: ${first?.path.length === 0 ? inFlow(first.text) : inBraces(own)}`;
  });
  return `{${pairs.join(', ')}}`;
}

/** Commas and brackets end a value between braces. */
function inFlow(text: string): string {
  return /^['"]/.test(text) || !/[,[\]{}]/.test(text) ? text : `'${text.replaceAll("'", "''")}'`;
}

function eventLines({ event }: Draft): string[] {
  if (event === null || event.flow.trim() === '') return [];
  const flow = event.flow.trim().replace(',', '.');
  const quantity = /[a-z]/i.test(flow) ? flow : `${flow} mm3/s`;
  return ['events:', `  - {event: ${event.event}, commandedFlow: ${scalarText(quantity)}}`];
}
