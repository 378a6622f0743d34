/** @module-tag long */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Validator } from '@cfworker/json-schema';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';
import { type Exported, exported } from './exported.ts';

const published = (name: string) => {
  const file = fileURLToPath(new URL(`./fixtures/${name}.json`, import.meta.url));
  return new Validator(JSON.parse(readFileSync(file, 'utf8')), '4', false);
};

/** What a reader makes of the types of Table Schema in a Parquet file. */
const typesOfReader: Readonly<Record<string, string>> = {
  ...{ string: 'VARCHAR', number: 'DOUBLE', integer: 'INTEGER', boolean: 'BOOLEAN', date: 'DATE' },
};

const quoted = (names: readonly string[]) => names.map((name) => `"${name}"`).join(', ');

describe('datapackage.json', () => {
  it('is valid by the published schemas of version 1, which version 2 keeps', async () => {
    const { descriptor } = await exported(sampleRegistry().cwd);
    expect(published('data-package').validate(descriptor)).toMatchObject({ valid: true });
    for (const resource of descriptor.resources) {
      const tabular = { ...resource, profile: 'tabular-data-resource' };
      expect(published('tabular-data-resource').validate(tabular), resource.name).toMatchObject({
        valid: true,
      });
    }
  });

  // datapackage.org, standard 2.0: Data Package ($schema, licenses, sources), Data Resource (name, path, type, format, hash), Table Schema (fields, primaryKey, foreignKeys).
  it('says what version 2 of the standard adds', async () => {
    const registry = sampleRegistry();
    await runCommand(registry.cwd, ['export', '--out', 'export', '--licence', 'CC0-1.0']);
    const descriptor = JSON.parse(readFileSync(join(registry.cwd, 'export/datapackage.json'), 'utf8'));
    expect(descriptor).toMatchObject({
      $schema: 'https://datapackage.org/profiles/2.0/datapackage.json',
      name: expect.stringMatching(/^[a-z0-9._-]+$/),
      licenses: [{ name: 'CC0-1.0' }],
      description: expect.stringMatching(/^Simulated readings .* supervised trial/),
    });
    for (const source of descriptor.sources) expect(source).toEqual({ title: expect.stringMatching(/\S/) });
    for (const resource of descriptor.resources) {
      expect(resource).toMatchObject({
        type: 'table',
        format: 'parquet',
        path: `${resource.name}.parquet`,
        name: expect.stringMatching(/^[a-z0-9._-]+$/),
        hash: expect.stringMatching(/^sha256:[0-9a-f]{64}$/),
        schema: { $schema: 'https://datapackage.org/profiles/2.0/tableschema.json' },
      });
    }
  });

  it('names the sources of the registry, and says which are invented', async () => {
    const registry = sampleRegistry();
    const [sheet, tables] = [
      'sources/oakhollow-daisy-pla-sheet.yaml',
      'sources/invented-plastics-tables.yaml',
    ];
    registry.write(sheet, `${registry.read(sheet)}invented: true\n`);
    registry.write(tables, `${registry.read(tables)}DOI: 10.1000/182\n`);
    const { descriptor } = await exported(registry.cwd);
    expect(descriptor).toMatchObject({
      sources: expect.arrayContaining([
        { title: expect.stringMatching(/Daisy PLA.*\(invented\)$/) },
        { title: expect.any(String), path: 'https://doi.org/10.1000/182' },
      ]),
    });
  });

  it('names no licence that nobody has named', async () => {
    expect((await exported(sampleRegistry().cwd)).descriptor).not.toHaveProperty('licenses');
  });

  it('names the columns and types that a reader finds in the files, with their bytes, digests and rows', async () => {
    const { folder, descriptor, ask } = await exported(sampleRegistry().cwd);
    for (const { path, schema, bytes, hash, rows } of descriptor.resources) {
      const found = await ask(`DESCRIBE FROM '${path}'`);
      expect(found.map(({ column_name, column_type }) => [column_name, column_type])).toEqual(
        schema.fields.map(({ name, type }) => [name, typesOfReader[type]]),
      );
      const file = readFileSync(join(folder, path));
      expect([file.length, `sha256:${createHash('sha256').update(file).digest('hex')}`]).toEqual([
        bytes,
        hash,
      ]);
      expect(await ask(`SELECT count(*)::INTEGER AS n FROM '${path}'`)).toEqual([{ n: rows }]);
    }
  });

  it('names keys that hold', async () => {
    const { descriptor, ask } = await exported(sampleRegistry().cwd);
    const faults = await Promise.all(descriptor.resources.map((resource) => keyFaults(resource, { ask })));
    expect(faults.flat()).toEqual([]);
  });
});

/** Rows that a primary key does not tell apart, and those that name nothing by a foreign key. */
async function keyFaults(
  { path, schema: { primaryKey, foreignKeys = [] } }: Exported['descriptor']['resources'][number],
  { ask }: Pick<Exported, 'ask'>,
): Promise<object[]> {
  const key = quoted(primaryKey);
  const doubled = await ask(`SELECT ${key}, count(*) AS n FROM '${path}' GROUP BY ${key} HAVING n > 1`);
  const missing = await Promise.all(
    foreignKeys.map(({ fields, reference }) => {
      const pairs = fields.map((field, index) => `own."${field}" = other."${reference.fields[index]}"`);
      return ask(`SELECT ${quoted(fields)} FROM '${path}' own ANTI JOIN '${reference.resource}.parquet' other
        ON ${pairs.join(' AND ')} WHERE own."${fields[0]}" IS NOT NULL`);
    }),
  );
  return [...doubled, ...missing.flat()];
}
