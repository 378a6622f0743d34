import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import { counted } from '../../text/words.ts';
import type { Hit } from '../hit.ts';
import { fromPointer, type Path } from '../shape.ts';
import type { SchemaPart, ShapeError } from './shape-validator.ts';

export type ShapeRule =
  | 'shape/unknown-key'
  | 'shape/missing-key'
  | 'shape/not-a-choice'
  | 'shape/wrong-type'
  | 'shape/text-form'
  | 'shape/date-form'
  | 'shape/size';

export type ShapeHit = Hit & { readonly rule: ShapeRule };

/** What a schema error means to the person who wrote the file. */
export function shapeMessage(error: ShapeError): ShapeHit {
  const path = fromPointer(error.instancePath);
  switch (error.keyword) {
    case 'additionalProperties':
      return unknownKey(error, path);
    case 'required':
      return missingKey(String(error.params.missingProperty), error.parentSchema, path);
    case 'dependencies':
      return missingKey(String(error.params.missingProperty), error.parentSchema, path);
    case 'enum':
    case 'const':
      return notAChoice(error, path);
    case 'type':
      return wrongType(error, path);
    case 'format':
    case 'pattern':
      return error.params.format === 'date' ? dateForm(error, path) : textForm(error, path);
    default:
      return wrongSize(error, path);
  }
}

/** What a place is called in a message: its key, its position in a list, or the value of a statement. */
export function placeName(path: Path): string {
  const last = path.at(-1);
  if (last === undefined) return 'the document';
  if (last === 'value' || last === 'interval') {
    const owner = path.findLast((step) => typeof step === 'string' && step !== last);
    return owner === undefined ? `"${last}"` : `the ${last} of "${owner}"`;
  }
  if (typeof last === 'string') return `"${quote(last)}"`;
  return `item ${last + 1} of ${path.length === 1 ? 'the list' : placeName(path.slice(0, -1))}`;
}

function exampleText(schema: SchemaPart | undefined): string | null {
  const example = schema?.examples?.[0];
  return example === undefined ? null : typeof example === 'string' ? example : JSON.stringify(example);
}

function unknownKey(error: ShapeError, path: Path): ShapeHit {
  const key = String(error.params.additionalProperty);
  const found = quote(key);
  const { keys, listed } = knownKeys(error.parentSchema);
  return {
    rule: 'shape/unknown-key',
    path: [...path, key],
    part: 'key',
    message: `"${found}" is not a key that ${path.length === 0 ? 'this kind of document' : placeName(path)} knows`,
    found,
    allowed: listed,
    help: wordHint(key, keys, 'Remove the key, or put its content under one that is known.'),
  };
}

const keysBySchema = new WeakMap<SchemaPart, { readonly keys: readonly string[]; readonly listed: string }>();

/** The keys of a mapping, made once: a hostile file asks for them tens of thousands of times. */
function knownKeys(schema: SchemaPart) {
  const known = keysBySchema.get(schema);
  if (known !== undefined) return known;
  const keys = Object.keys(schema.properties ?? {});
  const made = { keys, listed: keys.join(', ') };
  keysBySchema.set(schema, made);
  return made;
}

function missingKey(key: string, schema: SchemaPart, path: Path): ShapeHit {
  const property = schema.properties?.[key];
  const example = exampleText(property);
  const meaning = lower(property?.description ?? key);
  return {
    rule: 'shape/missing-key',
    path,
    part: 'key',
    message: `${path.length === 0 ? 'This document' : capital(placeName(path))} lacks "${key}"${meaning === key ? '' : `: ${meaning}`}`,
    allowed: key,
    help: example === null ? `Add "${key}".` : `Add it, for instance: \`${key}: ${example}\``,
  };
}

function notAChoice(error: ShapeError, path: Path): ShapeHit {
  const choices = error.keyword === 'const' ? [error.params.allowedValue] : (error.parentSchema.enum ?? []);
  const words = choices.map(String);
  const written = typeof error.data === 'string' ? error.data : '';
  return {
    rule: 'shape/not-a-choice',
    path,
    part: 'value',
    message: `${capital(placeName(path))} is "${quote(error.data)}", which is not one of the allowed values`,
    found: quote(error.data),
    allowed: words.join(', '),
    help: wordHint(written, words, `Write one of: ${words.join(', ')}.`),
  };
}

const typeNames: Readonly<Record<string, string>> = {
  string: 'text',
  object: 'a mapping (keys with values)',
  array: 'a list (lines that start with "- ")',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
};

function wrongType(error: ShapeError, path: Path): ShapeHit {
  const wanted = typeNames[String(error.params.type)] ?? String(error.params.type);
  const example = exampleText(error.parentSchema);
  return {
    rule: 'shape/wrong-type',
    path,
    part: 'value',
    message: `${capital(placeName(path))} must be ${wanted}`,
    found: error.data === null ? 'nothing' : quote(error.data),
    allowed: wanted,
    help: example === null ? `Write ${wanted}.` : `Write it like this: \`${example}\``,
  };
}

function textForm(error: ShapeError, path: Path): ShapeHit {
  const example = exampleText(error.parentSchema);
  return {
    rule: 'shape/text-form',
    path,
    part: 'value',
    message: `${capital(placeName(path))} is "${quote(error.data)}", which does not have the form it needs`,
    found: quote(error.data),
    ...(error.parentSchema.description && { allowed: error.parentSchema.description }),
    help: example === null ? 'Rewrite it.' : `Write it like this: \`${example}\``,
  };
}

function dateForm(error: ShapeError, path: Path): ShapeHit {
  return {
    rule: 'shape/date-form',
    path,
    part: 'value',
    message: `${capital(placeName(path))} is "${quote(error.data)}", which is not a day of the calendar`,
    found: quote(error.data),
    allowed: 'a date as YYYY-MM-DD (ISO 8601)',
    help: 'Write year, month and day with four, two and two digits, for instance 2026-03-12.',
  };
}

const sizeLimits: Readonly<Record<string, (limit: number) => string>> = {
  minItems: (limit) => `have at least ${counted(limit, 'entry', 'entries')}`,
  maxItems: (limit) => `have at most ${counted(limit, 'entry', 'entries')}`,
  minLength: (limit) => `have at least ${counted(limit, 'character')}`,
  maxLength: (limit) => `have at most ${counted(limit, 'character')}`,
  minProperties: (limit) => `have at least ${counted(limit, 'key')}`,
  minimum: (limit) => `be at least ${limit}`,
  maximum: (limit) => `be at most ${limit}`,
  uniqueItems: () => 'have no entry twice',
};

function wrongSize(error: ShapeError, path: Path): ShapeHit {
  const limit = sizeLimits[error.keyword]?.(Number(error.params.limit)) ?? 'be different';
  return {
    rule: 'shape/size',
    path,
    part: 'value',
    message: `${capital(placeName(path))} must ${limit}`,
    found: quote(error.data),
    allowed: limit.replace(/^(?:have|be) /, ''),
    help: `Change it: it must ${limit}.`,
  };
}

/** A text with its first letter as a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function lower(description: string): string {
  return description.charAt(0).toLowerCase() + description.slice(1).replace(/\.$/, '');
}
