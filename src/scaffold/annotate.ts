import { stringify } from 'yaml';
import { isObject } from '../registry/shape.ts';
import type { Field } from './field.ts';

/** Widest line of prose, with room for the `#` of the examples that it may stand in. */
const widestProse = 94;

/**
 * The lines of a field: what it means, whether it is mandatory, what may stand there, and its value; where there is
 * none, an example as a comment. Prose starts with `# `, an example with `#` and no blank, so that both people and
 * programs can tell them apart.
 */
export function annotatedLines(field: Field, value: unknown, indent: string): string[] {
  const duty = field.isMandatory ? 'Mandatory' : 'Optional';
  const prose = [`${duty}: ${lower(field.description)}`, field.allowed].filter((text) => text !== '');
  const comment = prose.flatMap((text) => proseLines(text, indent));
  if (value !== undefined) return [...comment, ...valueLines(field, value, indent)];
  const example = valueLines(field, field.example, indent);
  return [...comment, ...example.map((line) => `${indent}#${line.slice(indent.length)}`)];
}

/** A text as lines of comment. */
export function proseLines(text: string, indent = ''): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.replace(/\s+/g, ' ').trim().split(' ')) {
    if (line !== '' && indent.length + line.length + word.length > widestProse) {
      lines.push(`${indent}# ${line}`);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, `${indent}# ${line}`];
}

function valueLines(field: Field, value: unknown, indent: string): string[] {
  const { key, form, fields } = field;
  if (form === 'group' && isObject(value))
    return [`${indent}${key}:`, ...groupLines(fields, value, `${indent}  `)];
  if (form === 'groups' && Array.isArray(value)) {
    return [`${indent}${key}:`, ...value.flatMap((entry) => entryLines(fields, entry, `${indent}  `))];
  }
  if (form === 'statements' && Array.isArray(value)) {
    const block = stringify(
      { [key]: value },
      { schema: 'yaml-1.1', lineWidth: 0, singleQuote: true },
    ).trimEnd();
    return block.split('\n').map((line) => indent + line);
  }
  // Rows of readings, one a line.
  if (Array.isArray(value) && value.every(Array.isArray)) {
    return [`${indent}${key}:`, ...value.map((row) => `${indent}  - ${flowText(row)}`)];
  }
  return [`${indent}${key}: ${flowText(value)}`];
}

function groupLines(fields: readonly Field[], value: Record<string, unknown>, indent: string): string[] {
  return fields.flatMap((field) =>
    annotatedLines(field, Object.hasOwn(value, field.key) ? value[field.key] : undefined, indent),
  );
}

/** An entry of a list: its dash stands before its first key, or alone where that key is only an example. */
function entryLines(fields: readonly Field[], value: unknown, indent: string): string[] {
  const inner = `${indent}  `;
  const lines = groupLines(fields, isObject(value) ? value : {}, inner);
  const first = lines.findIndex((line) => !line.startsWith(`${inner}# `));
  const line = lines[first] ?? '';
  if (line === '' || line.startsWith(`${inner}#`)) return [`${indent}-`, ...lines];
  return [
    ...lines.slice(0, first).map((each) => indent + each.slice(inner.length)),
    `${indent}- ${line.slice(inner.length)}`,
    ...lines.slice(first + 1),
  ];
}

/** A value on one line; text that YAML, 1.1 too, would read as something else is quoted. */
function flowText(value: unknown): string {
  // JSON is YAML, and keeps a text of several lines on the line that a `#` may stand before.
  if (typeof value === 'string' && /[\r\n]/.test(value)) return JSON.stringify(value);
  return stringify(value, {
    schema: 'yaml-1.1',
    collectionStyle: 'flow',
    flowCollectionPadding: false,
    lineWidth: 0,
    singleQuote: true,
  }).trimEnd();
}

function lower(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
