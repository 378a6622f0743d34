import { Ajv } from 'ajv';
import formatsPlugin from 'ajv-formats';
import { describe, expect, it, test } from 'vitest';
import { type Key, keysOf } from '../../scripts/generate/key-facts.ts';
import { readSchema, type Schema } from '../../scripts/generate/schema-files.ts';
import { addedKeys } from '../../src/registry/addition.ts';
import { features } from '../../src/registry/generated/key-facts.ts';
import { kinds } from '../../src/registry/kind.ts';
import { nodesOf, readSchemaFile } from './schema-nodes.ts';

const names = ['common', 'quantity', 'statement', ...kinds];
const keys = kinds.flatMap((kind) =>
  keysOf(readSchema(kind), kind).map((key) => ({ ...key, place: `${kind} ${key.place}` })),
);
/** Keys that hold a number: not the units of columns. */
const quantities = keys.filter(({ quantity }) => quantity !== null && quantity.form !== 'unit');

function placesWhere(wrong: (key: Key) => boolean): string[] {
  return quantities.filter(wrong).map(({ place }) => place);
}

/** A validator that refuses what it does not know, and does not know our keyword. */
function strictValidator(): Ajv {
  const ajv = new Ajv({ strict: true, allErrors: true });
  formatsPlugin.default(ajv);
  return ajv;
}

describe('the keyword `meltbounds`', () => {
  const schema = readSchemaFile('key-facts');

  test('is described by a schema whose examples fit it', () => {
    const ajv = strictValidator();
    ajv.addSchema(schema, 'key-facts');
    expect(ajv.validateSchema(schema)).toBe(true);
    const unfit = [...nodesOf(schema)].flatMap((node) => {
      const validate = ajv.compile({ $ref: `key-facts#${node.pointer}` });
      const { examples = [] } = node.schema as Schema;
      return examples.filter((example) => !validate(example)).map(() => node.pointer);
    });
    const unexplained = [...nodesOf(schema)].filter(
      ({ isProperty, schema: { description, examples } }) =>
        isProperty && (typeof description !== 'string' || !Array.isArray(examples)),
    );
    expect([unfit, unexplained]).toEqual([[], []]);
  });

  test('holds what that schema allows wherever it stands', () => {
    const validate = strictValidator().compile(schema);
    const wrong = names.flatMap((name) =>
      [...nodesOf(readSchemaFile(name))]
        .filter((node) => 'meltbounds' in node.schema && !validate(node.schema.meltbounds))
        .map(({ pointer }) => `${name}#${pointer}`),
    );
    expect(wrong).toEqual([]);
  });

  it.each([{ lable: 'top speed' }, { safe: 'lower' }, { plausible: { usual: '1..2 mm' } }, { claim: 0 }, {}])(
    'does not take %j',
    (facts) => {
      expect(strictValidator().compile(schema)(facts)).toBe(false);
    },
  );

  it.each(kinds)('is passed over by a validator that does not know it: %s', (kind) => {
    const ajv = new Ajv({ strict: false, allErrors: true, logger: false });
    formatsPlugin.default(ajv);
    for (const name of names) ajv.addSchema(readSchemaFile(name));
    const validate = ajv.getSchema(`https://meltbounds.example/schema/${kind}.schema.json`);
    expect(validate?.({ meltbounds: {} })).toBe(false);
    expect(validate?.errors?.map(({ keyword }) => keyword)).not.toContain('meltbounds');
  });
});

describe('beside each quantity stands', () => {
  test('what it is called', () => {
    expect(placesWhere(({ facts }) => facts.label === undefined)).toEqual([]);
  });

  test('on which side it is safe, but for trials, which are records', () => {
    expect(
      placesWhere(({ place, facts }) => !place.startsWith('trial ') && facts.safe === undefined),
    ).toEqual([]);
  });

  test('in which band it lies, but where a rule of its own judges it', () => {
    const judgedOtherwise = [
      // plausibility/price, which knows the currencies.
      'machine price',
      'filament price',
      // plausibility/diameter-tolerance, a share of the diameter.
      'filament diameterTolerance',
      // plausibility/fraction-above-one: anything up to the whole is usual.
      'filament fan',
      // consistency/settings-above-machine holds them against the machine.
      ...features.flatMap((name) => [`trial settings.${name}.speed`, `trial settings.${name}.acceleration`]),
      // Judged as the filament that they are added to.
      ...addedKeys.map((key) => `addition ${key}`),
    ];
    expect(placesWhere(({ facts }) => facts.plausible === undefined).sort()).toEqual(judgedOtherwise.sort());
  });
});

test('the usual band lies within the possible one', () => {
  expect(
    placesWhere(({ facts: { plausible } }) => {
      if (plausible === undefined) return false;
      const { usual, possible } = plausible;
      return !(usual.low < usual.high && possible.low <= usual.low && usual.high <= possible.high);
    }),
  ).toEqual([]);
});

test('what limits a setting names a condition of trials', () => {
  const conditions = readSchema('trial').properties?.conditions?.properties ?? {};
  const named = keys.flatMap(({ facts }) => facts.limits ?? []);
  expect(named.length).toBeGreaterThan(0);
  expect(named.filter((name) => !Object.hasOwn(conditions, name))).toEqual([]);
});

test('claims are single numbers of machines', () => {
  const claimed = keys.filter(({ facts }) => facts.claim !== undefined);
  expect(claimed.length).toBeGreaterThan(0);
  expect(
    claimed.filter(({ place, quantity }) => !(place.startsWith('machine ') && quantity?.form === 'single')),
  ).toEqual([]);
});

test('policies, jobs and trials list the same paths of a part in the same order', () => {
  const { fractions, accelerationFractions, typicalSegments } = readSchema('policy').properties ?? {};
  const { features: paths } = readSchema('job').properties ?? {};
  const { settings } = readSchema('trial').properties ?? {};
  for (const group of [fractions, accelerationFractions, typicalSegments, paths, settings])
    expect(Object.keys(group?.properties ?? {})).toEqual(features);
});

test.each(['tables', 'comparison', 'diff'])('so does the schema of the output of %s', (output) => {
  const lists = [...nodesOf(readSchemaFile(`output/${output}`))].flatMap(({ schema }) =>
    Array.isArray(schema.enum) && schema.enum.includes('outerContour') ? [schema.enum] : [],
  );
  expect(lists.length).toBeGreaterThan(0);
  for (const list of lists) expect(list).toEqual(features);
});
