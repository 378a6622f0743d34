/** @module-tag long */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import formatsPlugin from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { deriveTables } from '../../../src/tables/derive/derive-tables.ts';
import { formatTableAsJson } from '../../../src/tables/write/table-as-json.ts';
import { sampleRegistry } from '../../sample-registry.ts';
import { pairing, tableWith } from '../derive/pairing-with.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../../schema/output/tables.schema.json', import.meta.url), 'utf8'),
);
const ajv = new Ajv({ strict: true, allErrors: true, allowUnionTypes: true });
formatsPlugin.default(ajv);
const validate = ajv.compile(schema);

function faultsOf(text: string) {
  return validate(JSON.parse(text)) ? [] : validate.errors;
}

const { registry } = loadFolders([fileURLToPath(new URL('../../../profiles', import.meta.url))]);
const pairings = [...registry.machine.keys()].flatMap((machine) =>
  [...registry.filament.keys()].flatMap((filament) =>
    [...registry.policy.keys()].map((policy) => ({ machine, filament, policy })),
  ),
);

describe('the published schema of the JSON tables', () => {
  it('describes the table of every pairing of the demo registry that has one', () => {
    const tables = pairings
      .map((pairing) => deriveTables(registry, pairing, { judgesEvidence: false }))
      .filter((table) => table.ok);
    expect(tables.length).toBeGreaterThan(10);
    for (const { value } of tables) expect(faultsOf(formatTableAsJson(value))).toEqual([]);
  });

  it('describes a table with evidence that does not stand', () => {
    const table = tableWith({ machine: { firmware: '2.0.0', dryer: { setting: 'fixed', temperature: 65 } } });
    expect(faultsOf(formatTableAsJson(table))).toEqual([]);
  });

  it('describes a table that rests on an addition', () => {
    const { cwd, write } = sampleRegistry();
    write(
      'additions/own-daisy.yaml',
      'kind: addition\nid: own-daisy\nversion: 1.0.0\nfilament: oakhollow/daisy-pla\nmeltFlow:\n  - {value: 9 mm3/s, basis: measured, evidence: wren-daisy-pla-215, at: {machine: plumstead/wren, nozzle: hs-0.4, nozzleTemperature: 215 Cel}}\n',
    );
    const { registry: layered } = loadFolders(['profiles'], cwd);
    const table = deriveTables(layered, { ...pairing, nozzle: 'hs-0.4' }, { judgesEvidence: false });
    const text = table.ok ? formatTableAsJson(table.value) : table.error.message;
    expect(faultsOf(text)).toEqual([]);
    expect(text).toContain('"addition"');
  });

  it.each<[string, (document: Record<string, unknown>) => void]>([
    [
      'nothing at all',
      (document) => {
        for (const key of Object.keys(document)) delete document[key];
      },
    ],
    [
      'an unknown key',
      (document) => {
        document.extra = 1;
      },
    ],
    [
      'another form',
      (document) => {
        document.format = 'meltbounds-tables/1';
      },
    ],
    [
      'no rows',
      (document) => {
        document.rows = [];
      },
    ],
  ])('refuses %s', (_, spoil) => {
    const document = JSON.parse(formatTableAsJson(tableWith())) as Record<string, unknown>;
    spoil(document);
    expect(faultsOf(JSON.stringify(document))).not.toEqual([]);
  });
});
