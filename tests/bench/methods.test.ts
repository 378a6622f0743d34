import { describe, expect, test } from 'vitest';
import { factTexts } from '../../src/bench/bench-run.ts';
import { benchMethods, methodNames } from '../../src/bench/methods.ts';
import { shapes } from '../../src/registry/generated/shapes.ts';
import { shapeAt } from '../../src/registry/shape.ts';
import { parseQuantity } from '../../src/units/parse-quantity.ts';
import { readSchemaFile } from '../schema/schema-nodes.ts';

const properties = readSchemaFile('trial').properties as Record<string, { readonly enum?: string[] }>;

test('the schema of trials and the bench know the same methods', () => {
  expect(properties.method?.enum).toEqual(methodNames);
});

describe.each(methodNames)('%s', (name) => {
  const { method, columns, optional = [], eitherOf = [], takes, needs } = benchMethods[name];

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

  test('leaves out only columns that it has, and needs only facts that it takes', () => {
    expect(Object.keys(columns)).toEqual(expect.arrayContaining([...optional, ...eitherOf]));
    expect(takes).toEqual(expect.arrayContaining([...needs]));
  });

  test('takes no two facts that share an option of the command line', () => {
    const flags = takes.map((fact) => factTexts[fact].flag);
    expect(new Set(flags).size).toBe(flags.length);
  });
});

test('every column of the schema belongs to a method', () => {
  const used = new Set(methodNames.flatMap((name) => Object.keys(benchMethods[name].columns)));
  const shape = shapeAt(shapes.trial, ['observations', 'columns']);
  expect(shape?.type === 'object' ? Object.keys(shape.properties).sort() : []).toEqual([...used].sort());
});

test('the example of every fact reads as its dimension', () => {
  for (const { form, example } of Object.values(factTexts)) {
    if (form === 'wholeNumber') expect(example).toMatch(/^[2-5]$/);
    else if ('choices' in form) expect(form.choices).toContain(example);
    else expect(parseQuantity(example, form.dimension).ok).toBe(true);
  }
});
