import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { documentTypesModule } from '../scripts/generate/document-types.ts';
import { claimsOutputSchema, keyFactsModule } from '../scripts/generate/key-facts.ts';
import { listingOutputs, listingSchema } from '../scripts/generate/output-lists.ts';
import { quantitySchema } from '../scripts/generate/quantity-schema.ts';
import { ruleFilesModule } from '../scripts/generate/rule-files.ts';
import { kindNames } from '../scripts/generate/schema-files.ts';
import { shapesModule } from '../scripts/generate/shapes.ts';
import { statementSchema } from '../scripts/generate/statement-schema.ts';
import { schemaDigest, validatorsModule } from '../scripts/generate/validators.ts';
import { schemaDigest as compiledDigest } from '../src/registry/generated/validators.js';
import { kinds } from '../src/registry/kind.ts';

function present(path: string): string {
  return readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');
}

function json(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

describe('`npm run generate` would change nothing:', () => {
  test('quantity.schema.json', () => {
    expect(present('schema/quantity.schema.json')).toBe(json(quantitySchema()));
  });

  test('statement.schema.json', () => {
    expect(present('schema/statement.schema.json')).toBe(json(statementSchema()));
  });

  test('documents.ts', async () => {
    expect(present('src/registry/generated/documents.ts')).toBe(await documentTypesModule());
  });

  test('shapes.ts', () => {
    expect(present('src/registry/generated/shapes.ts')).toBe(shapesModule());
  });

  test('rule-files.ts', () => {
    expect(present('src/rules/generated/rule-files.ts')).toBe(ruleFilesModule());
  });

  test('key-facts.ts', () => {
    expect(present('src/registry/generated/key-facts.ts')).toBe(keyFactsModule());
  });

  test('the properties in output/claims.schema.json', () => {
    const schema = present('schema/output/claims.schema.json');
    expect(claimsOutputSchema(schema)).toBe(schema);
  });

  test.each(listingOutputs)('the lists in output/%s.schema.json', (name) => {
    const schema = present(`schema/output/${name}.schema.json`);
    expect(listingSchema(name, schema)).toBe(schema);
    expect(listingSchema(name, schema.replace(/"(?:flowLadder|infill)",\s*/, ''))).toBe(schema);
  });

  test('validators.js, which is built and not committed', async () => {
    expect(present('src/registry/generated/validators.js')).toBe(await validatorsModule());
  });
});

test('the compiled validators carry the digest of the schemas in the folder', () => {
  expect(compiledDigest).toBe(schemaDigest());
});

test('the generator and the registry know the same kinds', () => {
  expect(kindNames).toEqual(kinds);
});
