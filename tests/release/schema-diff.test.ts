import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { schemaDiff } from '../../scripts/release/schema-diff.ts';

const schema = (properties: object, required: readonly string[] = []) =>
  new Map<string, unknown>([['job', { type: 'object', properties, required }]]);
const text = { type: 'string' };

it.each([
  ['a new property', { name: text }, { name: text, note: text }, { added: ['job/note'], breaking: [] }],
  [
    'a property that is gone',
    { name: text, note: text },
    { name: text },
    { added: [], breaking: ['job/note is gone'] },
  ],
  [
    'a new choice',
    { unit: { enum: ['mm'] } },
    { unit: { enum: ['mm', 'cm'] } },
    { added: ['job/unit/cm'], breaking: [] },
  ],
  [
    'a choice that is gone',
    { unit: { enum: ['mm', 'cm'] } },
    { unit: { enum: ['mm'] } },
    { added: [], breaking: ['job/unit/cm is gone'] },
  ],
  [
    'a property with all that stands in it',
    {},
    { bed: { properties: { size: text }, required: ['size'] } },
    { added: ['job/bed'], breaking: [] },
  ],
  [
    'a property of the items of a list',
    { parts: { items: { properties: { a: text } } } },
    { parts: { items: { properties: { a: text, b: text } } } },
    { added: ['job/parts/b'], breaking: [] },
  ],
])('sees %s', (_, base, head, diff) => {
  expect(schemaDiff(schema(base), schema(head))).toEqual(diff);
});

it('sees what must be there from now on', () => {
  const [loose, strict] = [schema({ name: text }), schema({ name: text, id: text }, ['name', 'id'])];
  expect(schemaDiff(loose, strict)).toEqual({
    added: [],
    breaking: ['job/name is mandatory', 'job/id is mandatory'],
  });
});

it('finds nothing in a schema and itself', () => {
  const file = new URL('../../schema/filament.schema.json', import.meta.url);
  const filament = new Map([['filament', JSON.parse(readFileSync(file, 'utf8')) as unknown]]);
  expect(schemaDiff(filament, filament)).toEqual({ added: [], breaking: [] });
});
