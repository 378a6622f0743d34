import { readdirSync, readFileSync } from 'node:fs';
import { Validator } from '@cfworker/json-schema';
import {
  registerSchema,
  type SchemaObject,
  unregisterSchema,
  validate,
} from '@hyperjump/json-schema/draft-07';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { portableNumberPattern } from '../../scripts/generate/portable-number.ts';
import { type Kind, kindFolders, kinds } from '../../src/registry/kind.ts';
import { numberPattern } from '../../src/units/number-form.ts';
import { runs } from '../property-runs.ts';
import { nodesOf, type SchemaNode } from './schema-nodes.ts';

type Mapping = Record<string, unknown>;

function readBundle(kind: Kind): SchemaNode['schema'] {
  return JSON.parse(
    readFileSync(new URL(`../../schema/bundle/${kind}.schema.json`, import.meta.url), 'utf8'),
  );
}

const bundles = new Map(kinds.map((kind) => [kind, readBundle(kind)]));
const address = (kind: Kind) => `https://registry.example/${kind}`;
for (const [kind, schema] of bundles) registerSchema(schema as SchemaObject, address(kind));
afterAll(() => {
  for (const kind of kinds) unregisterSchema(address(kind));
});

/** Three implementations that share no code, each with the bundle as it is: no extensions, nothing switched off. */
const readers: readonly (readonly [string, (kind: Kind) => Promise<(value: unknown) => boolean>])[] = [
  [
    'ajv, strict',
    async (kind) => new Ajv({ strict: true, strictRequired: true }).compile(bundles.get(kind) ?? {}),
  ],
  [
    '@hyperjump/json-schema',
    async (kind) => {
      const judge = await validate(address(kind));
      return (value) => judge(value as Parameters<typeof judge>[0]).valid;
    },
  ],
  [
    '@cfworker/json-schema',
    async (kind) => {
      const validator = new Validator(bundles.get(kind) ?? {}, '7');
      return (value) => validator.validate(value).valid;
    },
  ],
];

function profilesOf(kind: Kind): unknown[] {
  const folder = new URL(`../../profiles/${kindFolders[kind]}/`, import.meta.url);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.yaml'))
    .map((path) => parse(readFileSync(new URL(path, folder), 'utf8')));
}

const demo = new Map<Kind, unknown[]>(
  kinds.filter((kind) => kind !== 'addition').map((kind) => [kind, profilesOf(kind)]),
);

function first(kind: Kind): Mapping {
  return structuredClone(demo.get(kind)?.[0]) as Mapping;
}

const changed = (kind: Kind, change: Mapping): readonly [Kind, Mapping] => [
  kind,
  { ...first(kind), ...change },
];
const density = (statement: Mapping) =>
  changed('filament', {
    density: [{ value: '1.24 g/cm3', basis: 'claimed', source: 'sheet', ...statement }],
  });

const wrong: Readonly<Record<string, readonly [Kind, Mapping]>> = {
  'an unknown key': changed('machine', { temperatute: '230 Cel' }),
  'no id': ['machine', { kind: 'machine' }],
  'another kind': changed('job', { kind: 'policy' }),
  'an id in capitals': changed('trial', { id: 'Ladder' }),
  'an id of a machine without its maker': changed('machine', { id: 'lantern' }),
  'an id that a line end follows': changed('trial', { id: 'ladder\n' }),
  'a version of two numbers': changed('filament', { version: '1.0' }),
  'a version that is a number': changed('filament', { version: 1 }),
  'a version that a line end follows': changed('filament', { version: '1.0.0\n' }),
  'a version in digits of another script': changed('filament', { version: '١.0.0' }),
  'a day that no calendar has': changed('trial', { date: '2026-02-29' }),
  'a thirteenth month': changed('trial', { date: '2026-13-01' }),
  'a date in another order': changed('trial', { date: '01.03.2026' }),
  'a date that a line end follows': changed('trial', { date: '2026-03-01\n' }),
  'a bare number': density({ value: 1.24 }),
  'a number without its unit': density({ value: '1.24' }),
  'a unit of another dimension': density({ value: '1.24 mm' }),
  'a decimal comma': density({ value: '1,24 g/cm3' }),
  'more digits than are read': density({ value: '1.240000000000000 g/cm3' }),
  'a quantity that a line end follows': density({ value: '1.24 g/cm3\n' }),
  'a basis that there is none of': density({ basis: 'guessed' }),
  'an empty list': changed('filament', { density: [] }),
  'a designation in lower case': changed('filament', { designation: 'pla' }),
  'an address with a space': changed('source', { URL: 'https://example.org/a b' }),
};

describe.each(readers)('%s', (_, compileNew) => {
  const compiled = new Map<Kind, ReturnType<typeof compileNew>>();
  const compile = (kind: Kind) => {
    const judge = compiled.get(kind) ?? compileNew(kind);
    compiled.set(kind, judge);
    return judge;
  };

  test('takes every profile of the demo registry', async () => {
    for (const [kind, profiles] of demo) {
      const accepts = await compile(kind);
      expect(profiles.length, kind).toBeGreaterThan(0);
      expect(profiles.filter((profile) => !accepts(profile))).toEqual([]);
    }
  });

  test.each(Object.entries(wrong))('refuses %s', async (_, [kind, profile]) => {
    const accepts = await compile(kind);
    expect(accepts(profile)).toBe(false);
  });
});

describe.each([...bundles])('the bundle of the kind %s', (_, schema) => {
  const nodes = [...nodesOf(schema)];

  test('stands by itself: no address of its own, no reference to a file, nothing that is not used', () => {
    expect(JSON.stringify(schema)).not.toMatch(/"\$id"|"format":|meltbounds\.example/);
    const references = new Set(nodes.flatMap(({ schema: node }) => node.$ref ?? []));
    const present = Object.keys(schema.definitions ?? {}).map((name) => `#/definitions/${name}`);
    expect([...references].sort()).toEqual(present.sort());
  });

  test('has patterns that engines of every kind take', () => {
    const patterns = nodes.flatMap(({ schema: node }) => node.pattern ?? []) as string[];
    expect(patterns.length).toBeGreaterThan(0);
    // Groups that look ahead, classes that mean other characters elsewhere, escapes that not all engines know.
    const special = patterns.filter((pattern) => /\(\?(?!:)|\\[a-zA-Z0-9]/.test(pattern));
    expect(special).toEqual([]);
    expect(patterns.filter((pattern) => !/^\^.*\$$/s.test(pattern))).toEqual([]);
  });

  test('lets no text that a pattern judges hold a line end', () => {
    const open = nodes.filter(({ schema: node }) => node.pattern !== undefined && node.not === undefined);
    expect(open).toEqual([]);
  });
});

test('the two patterns of a number take the same texts', () => {
  const [compact, portable] = [numberPattern, portableNumberPattern].map((each) => new RegExp(`^${each}$`));
  const zeros = fc.nat(24).map((count) => '0'.repeat(count));
  const digits = fc.string({ unit: fc.constantFrom(...'0123456789'), maxLength: 18 });
  const point = fc.constantFrom('', '.');
  const end = fc.constantFrom('', 'e5', 'E-12', 'e123', '.', ' ');
  const text = fc
    .tuple(fc.constantFrom('', '-', '0', '0.'), zeros, digits, point, digits, end)
    .map((parts) => parts.join(''));
  fc.assert(
    fc.property(text, (each) => {
      expect(portable?.test(each)).toBe(compact?.test(each));
    }),
    { numRuns: runs(4000) },
  );
});

test('the catalogue names every kind, by the files that hold it', () => {
  const catalogue = JSON.parse(
    readFileSync(new URL('../../schema/bundle/catalogue.json', import.meta.url), 'utf8'),
  );
  const folders = catalogue.schemas.map(
    ({ fileMatch }: { fileMatch: string[] }) => fileMatch[0]?.split('/')[2],
  );
  expect(folders).toEqual(kinds.map((kind) => kindFolders[kind]));
  expect(catalogue.schemas.every(({ url }: { url: string }) => url.startsWith('https://'))).toBe(true);
});
