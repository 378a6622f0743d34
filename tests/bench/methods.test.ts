import { describe, expect, test } from 'vitest';
import { allFacts, methodNames } from '../../src/bench/method-facts.ts';
import { allMethods, methodOf } from '../../src/bench/methods.ts';
import { shapes } from '../../src/registry/generated/shapes.ts';
import { shapeAt } from '../../src/registry/shape.ts';
import { parseQuantity } from '../../src/units/parse-quantity.ts';
import { readSchemaFile } from '../schema/schema-nodes.ts';

const properties = readSchemaFile('trial').properties as Record<string, { readonly enum?: string[] }>;

test('the schema of trials and the bench know the same methods', () => {
  expect(properties.method?.enum).toEqual(methodNames);
});

describe.each(methodNames)('%s', (name) => {
  const {
    method,
    columns,
    optional = [],
    eitherOf = [],
    facts,
    requiredFacts,
    requiredKeys,
    results,
    adoptable,
  } = methodOf(name);

  test('stands under its own name', () => {
    expect(method).toBe(name);
  });

  test('has columns that the schema knows, with the same dimensions', () => {
    const known = Object.keys(columns).map((column) => [
      column,
      shapeAt(shapes.trial, ['observations', 'columns', column]),
    ]);
    expect(Object.fromEntries(known)).toEqual(
      Object.fromEntries(
        Object.entries(columns).map(([column, dimension]) => [
          column,
          { type: 'quantity', dimension, form: 'unit' },
        ]),
      ),
    );
  });

  test('leaves out only columns that it has, and requires only facts that it can use', () => {
    expect(Object.keys(columns)).toEqual(expect.arrayContaining([...optional, ...eitherOf.flat()]));
    expect(Object.keys(facts)).toEqual(expect.arrayContaining([...requiredFacts]));
  });

  test('requires keys that the schema of trials knows', () => {
    for (const { path, example } of requiredKeys) {
      expect(shapeAt(shapes.trial, path)).not.toBeNull();
      expect(example).toContain(path.at(-1));
    }
  });

  test('has only results of its own that profiles can adopt', () => {
    expect(Object.keys(results)).toEqual(expect.arrayContaining(adoptable.map(({ quantity }) => quantity)));
  });

  test('has no two facts that share an option of the command line', () => {
    const flags = Object.values(facts).map(({ flag }) => flag);
    expect(new Set(flags).size).toBe(flags.length);
  });
});

test('every column of the schema belongs to a method', () => {
  const used = new Set(allMethods.flatMap(({ columns }) => Object.keys(columns)));
  const shape = shapeAt(shapes.trial, ['observations', 'columns']);
  expect(shape?.type === 'object' ? Object.keys(shape.properties).sort() : []).toEqual([...used].sort());
});

test('the example of every fact reads as its dimension', () => {
  for (const { form, example } of allFacts) {
    if (form === 'wholeNumber') expect(example).toMatch(/^[2-5]$/);
    else if ('choices' in form) expect(form.choices).toContain(example);
    else expect(parseQuantity(example, form.dimension).ok).toBe(true);
  }
});

test('the list of facts holds those of every method', () => {
  const facts = allMethods.flatMap((method) => Object.values(method.facts));
  expect(new Set(allFacts)).toEqual(new Set(facts));
  expect(methodNames).toEqual(allMethods.map(({ method }) => method));
});
