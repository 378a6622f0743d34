import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { transform } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { documentTypesModule } from '../../scripts/generate/document-types.ts';
import { claimsOutputSchema, keyFactsModule } from '../../scripts/generate/key-facts.ts';
import { kindPages } from '../../scripts/generate/kind-pages.ts';
import { readSchema, type Schema, type SchemaReader } from '../../scripts/generate/schema-files.ts';
import { shapesModule } from '../../scripts/generate/shapes.ts';
import { validatorsModule } from '../../scripts/generate/validators.ts';

// What somebody gets who adds a measured property to machines: everything below follows from the schema alone. The
// property is a made-up one, in a copy of the schema; the generators write their modules from it into a folder, and the
// program runs with those.

const property: Schema = {
  $ref: 'statement.schema.json#/definitions/lengthStatements',
  description: 'Length of filament that is drawn back before a travel move.',
  examples: [[{ value: '0.8 mm', basis: 'assumed', reason: 'Shop habit' }]],
  meltbounds: {
    label: 'drawn-back length',
    safe: 'above',
    plausible: { usual: '0.2..8 mm', possible: '0.02..50 mm', source: 'practice' },
    claim: 4,
  },
};

const read: SchemaReader = (name) => {
  const schema = readSchema(name);
  const hotEnd = schema.properties?.hotEnds?.items?.properties;
  if (name === 'machine' && hotEnd !== undefined) hotEnd.drawnBackLength = property;
  return schema;
};

const folder = mkdtempSync(join(tmpdir(), 'meltbounds-property-'));
const sample = fileURLToPath(new URL('../fixtures/registry/', import.meta.url));
const wren = 'machines/plumstead/wren.yaml';

const pathOf = (name: string) => `../../src/registry/generated/${name}`;

/** Lets the program read a generated module as the generator writes it from the schema with the property. */
async function generated(name: string, text: string): Promise<void> {
  const file = join(folder, `${name}.mjs`);
  writeFileSync(file, (await transform(text, { loader: 'ts' })).code);
  const module: unknown = await import(pathToFileURL(file).href);
  vi.doMock(pathOf(name), () => module as object);
}

beforeAll(async () => {
  vi.resetModules();
  await generated('shapes.ts', shapesModule(read));
  await generated('key-facts.ts', keyFactsModule(read));
  await generated('validators.js', await validatorsModule(read));
});

// Files that run after this one have the modules as they are.
afterAll(() => {
  for (const name of ['shapes.ts', 'key-facts.ts', 'validators.js']) vi.doUnmock(pathOf(name));
  vi.resetModules();
  rmSync(folder, { recursive: true });
});

/** The sample registry whose machine states the property so. */
async function registryWith(value: string) {
  const { loadFiles } = await import('../../src/registry/load-files.ts');
  const texts = new Map(
    readdirSync(sample, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(?:yaml|csv)$/.test(name))
      .map((name) => [name.replaceAll('\\', '/'), readFileSync(join(sample, name), 'utf8')]),
  );
  const text = texts.get(wren) ?? '';
  const stated = `    drawnBackLength:\n      - {value: ${value}, basis: claimed, source: plumstead-wren-sheet}\n`;
  texts.set(wren, text.replace('    temperatureLimit:\n', `${stated}$&`));
  return loadFiles([{ folder: 'profiles', texts }]);
}

describe('a measured property that only the schema of machines knows', () => {
  async function findingsAt(value: string): Promise<string[]> {
    const { checkRegistry } = await import('../../src/rules/engine/check-registry.ts');
    const loaded = await registryWith(value);
    const findings = checkRegistry(loaded, { today: '2026-06-01' });
    return findings.map(({ rule, message, source = '' }) => `${rule}: ${message} (${source})`);
  }

  it('is judged by `check`, in the band and with the source of the schema', async () => {
    const practice = 'Common practice, no source: what machines and filaments on the market have';
    expect(await findingsAt('0.8 mm')).toEqual([]);
    expect(await findingsAt('12 mm')).toEqual([
      `plausibility/unusual-figure: 12 mm is unusual (0.2..8 mm) (${practice})`,
    ]);
    expect(await findingsAt('80 mm')).toEqual([
      `plausibility/impossible-figure: 80 mm cannot be: it lies far outside of what exists (0.02..50 mm) (${practice})`,
    ]);
    expect(await findingsAt('0.8 s')).toEqual([expect.stringMatching(/^units\/wrong-dimension: /)]);
  });

  it.each([
    ['0.8 mm', '0.9 mm', 'major'],
    ['0.8 mm', '0.7 mm', 'minor'],
  ])('that goes from %s to %s is a %s change for `diff`', async (from, to, bump) => {
    const { diffRegistries } = await import('../../src/decisions/diff/diff-registries.ts');
    const { profiles } = diffRegistries(await registryWith(from), await registryWith(to));
    const changes = profiles.flatMap((profile) => profile.changes);
    expect(changes.map((change) => [change.name, change.bump])).toEqual([
      ['hotEnds/main/drawnBackLength', bump],
    ]);
  });

  it('is listed by `claims`, untested until a bench says otherwise, and less of it is better', async () => {
    const { judgeClaims } = await import('../../src/decisions/claims/judge-claims.ts');
    const { registry } = await registryWith('0.8 mm');
    const judged = judgeClaims(registry, 'plumstead/wren', { today: '2026-06-01' });
    const found = judged.ok
      ? judged.value.claims.find(({ claim }) => claim.property === 'drawnBackLength')
      : null;
    expect(found).toMatchObject({
      claim: { label: 'drawn-back length of hot end "main"', dimension: 'length', lessIsBetter: true },
      status: 'untested',
      text: 'no trial measures it',
    });
    const names = JSON.stringify(['meltZoneLength', 'drawnBackLength']).slice(1, -1).replace(',', ', ');
    const output = readFileSync(new URL('../../schema/output/claims.schema.json', import.meta.url), 'utf8');
    expect(claimsOutputSchema(output, read).replace(/,\s+/g, ', ')).toContain(names);
  });

  it('is called by its label where a table rests on it', async () => {
    const { sourcedStatement } = await import('../../src/tables/derive/sourced-value.ts');
    const { statementsOf } = await import('../../src/registry/statement.ts');
    const { registry } = await registryWith('0.8 mm');
    const machine = registry.machine.get('plumstead/wren')!;
    const stated = [...statementsOf(machine)].find(({ path }) => path.includes('drawnBackLength'))!;
    expect(sourcedStatement(machine, stated.statement as never)).toMatchObject({
      what: 'drawn-back length of the hot end',
      dimension: 'length',
      value: 0.8,
      basis: 'claimed',
    });
  });

  it('stands in the file that `new` writes', async () => {
    const { formatNewProfile } = await import('../../src/scaffold/scaffold.ts');
    const names = readdirSync(new URL('../../schema/', import.meta.url)).filter((name) =>
      name.endsWith('.json'),
    );
    const files = Object.fromEntries(names.map((name) => [name, read(name.replace('.schema.json', ''))]));
    const text = formatNewProfile(
      { kind: 'machine', answers: {}, schemaPath: 'machine.schema.json' },
      files as never,
    );
    expect(text).toContain('# Optional: length of filament that is drawn back before a travel move.');
    expect(text).toContain('drawnBackLength:');
  });

  it('is on the page of machines with its label, safe side, band and source, and in the types', async () => {
    expect(kindPages(read).get('machine.md')).toContain(
      '| `hotEnds[].drawnBackLength` | drawn-back length of the hot end | above it | `0.2..8 mm` | `0.02..50 mm` | `practice` |',
    );
    expect(await documentTypesModule(read)).toContain('drawnBackLength?: readonly Statement<Millimetres>[];');
  });
});
