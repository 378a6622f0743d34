import { readdirSync } from 'node:fs';
import { Ajv } from 'ajv';
import formatsPlugin from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { addFactKeywords } from '../../scripts/generate/validators.ts';
import { validators } from '../../src/registry/generated/validators.js';
import { kinds } from '../../src/registry/kind.ts';
import { nodesOf, readSchemaFile, type SchemaNode } from './schema-nodes.ts';

const shared = ['common', 'quantity', 'statement'];
const names = [...shared, ...kinds];
const files = names.map((name) => ({ name, schema: readSchemaFile(name) }));
const everyNode = files.flatMap(({ name, schema }) =>
  [...nodesOf(schema)].map((node) => ({ ...node, place: `${name}#${node.pointer}`, name })),
);

const idOf = (name: string) => `https://meltbounds.example/schema/${name}.schema.json`;

const ajv = new Ajv({ strict: true, strictRequired: true, allErrors: true });
// What language servers for YAML read and validators pass over.
ajv.addVocabulary(['defaultSnippets', 'patternErrorMessage']);
addFactKeywords(ajv, readSchemaFile('key-facts'));
formatsPlugin.default(ajv);
for (const { schema } of files) ajv.addSchema(schema);

function placesWhere(wrong: (node: SchemaNode) => boolean): string[] {
  return everyNode.filter(wrong).map(({ place }) => place);
}

test('the folder holds one schema per kind, the shared ones and that of our own keyword', () => {
  const inFolder = readdirSync(new URL('../../schema/', import.meta.url));
  const present = inFolder.filter((name) => name !== 'output' && name !== 'bundle').sort();
  expect(present).toEqual([...names, 'key-facts'].map((name) => `${name}.schema.json`).sort());
});

describe.each(files)('the schema $name', ({ name, schema }) => {
  test('is draft-07, which editors for YAML understand, and says what it is', () => {
    expect(schema).toMatchObject({
      $schema: 'http://json-schema.org/draft-07/schema#',
      $id: idOf(name),
      title: expect.stringMatching(/\w/),
      description: expect.stringMatching(/\w/),
    });
    expect(ajv.validateSchema(schema)).toBe(true);
  });

  test('uses no keyword but those that messages and editors can explain, so no untagged union either', () => {
    const known = new Set([
      ...['$schema', '$id', '$ref', 'title', 'description', 'examples', 'default', 'definitions'],
      ...['type', 'const', 'enum', 'format', 'pattern', 'minLength', 'maxLength', 'minimum', 'maximum'],
      ...['properties', 'additionalProperties', 'required', 'minProperties', 'dependencies'],
      ...['items', 'minItems', 'maxItems', 'uniqueItems'],
      ...['defaultSnippets', 'patternErrorMessage', 'meltbounds', 'meltboundsShared'],
    ]);
    const unknown = [...nodesOf(schema)].flatMap((node) =>
      Object.keys(node.schema).filter((keyword) => !known.has(keyword)),
    );
    expect(unknown).toEqual([]);
  });
});

describe('in every schema', () => {
  test('each object is closed', () => {
    const open = placesWhere(
      ({ schema }) =>
        (schema.type === 'object' || schema.properties !== undefined) &&
        (schema.type !== 'object' ||
          schema.additionalProperties !== false ||
          schema.properties === undefined),
    );
    expect(open).toEqual([]);
  });

  test('each property says what it is and gives an example', () => {
    const bare = placesWhere(
      ({ schema, isProperty }) =>
        isProperty &&
        !(
          typeof schema.description === 'string' &&
          /^[A-Z0-9].*\.$/.test(schema.description) &&
          Array.isArray(schema.examples) &&
          schema.examples.length > 0
        ),
    );
    expect(bare).toEqual([]);
  });

  test('each list is bounded', () => {
    expect(
      placesWhere(
        ({ schema }) =>
          schema.type === 'array' && !(Number(schema.minItems) >= 1 && Number(schema.maxItems) <= 2000),
      ),
    ).toEqual([]);
  });

  test('each example is valid at its own place', () => {
    const wrong = everyNode.flatMap(({ schema, pointer, place, name }) => {
      if (!Array.isArray(schema.examples)) return [];
      const validate = ajv.compile({ $ref: `${idOf(name)}#${pointer}` });
      return schema.examples
        .filter((example) => !validate(example))
        .map((example) => `${place}: ${JSON.stringify(example)}`);
    });
    expect(wrong).toEqual([]);
  });

  test('each reference leads to a definition', () => {
    const existing = new Set(everyNode.map(({ place }) => place));
    const dangling = everyNode.filter(({ schema, name }) => {
      if (typeof schema.$ref !== 'string') return false;
      const [file, pointer] = schema.$ref.split('#');
      return !existing.has(`${file === '' ? name : file?.replace('.schema.json', '')}#${pointer}`);
    });
    expect(dangling.map(({ place }) => place)).toEqual([]);
  });

  test.each(['__proto__', 'constructor', 'toString'])('no object takes the key %s', (key) => {
    const intruder: unknown = JSON.parse(`{"${key}": {}}`);
    const objects = everyNode.filter(({ schema }) => schema.type === 'object');
    expect(objects.length).toBeGreaterThan(kinds.length);
    const taking = objects.filter(({ pointer, name }) => {
      const validate = ajv.compile({ $ref: `${idOf(name)}#${pointer}` });
      validate(intruder);
      return !validate.errors?.some(
        (error) => error.keyword === 'additionalProperties' && error.params.additionalProperty === key,
      );
    });
    expect(taking.map(({ place }) => place)).toEqual([]);
  });
});

describe.each(kinds)('a document of the kind %s', (kind) => {
  test('must hold something', () => {
    expect(validators[kind]({})).toBe(false);
    expect(validators[kind].errors?.map(({ keyword }) => keyword)).toContain('required');
  });

  test('names its kind first', () => {
    const { required, properties } = readSchemaFile(kind);
    expect((required as string[]).slice(0, 2)).toEqual(['kind', 'id']);
    expect((properties as Record<string, unknown>).kind).toMatchObject({ const: kind });
  });

  test.each(['__proto__', 'constructor'])('has no key %s in the compiled validator either', (key) => {
    validators[kind](JSON.parse(`{"${key}": 1}`));
    const unknown = validators[kind].errors?.filter(({ keyword }) => keyword === 'additionalProperties');
    expect(unknown?.map(({ params }) => params.additionalProperty)).toEqual([key]);
  });
});
