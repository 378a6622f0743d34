import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { exportPairings } from '../../src/export/export-pairings.ts';
import { loadFolders } from '../../src/host/load-registry.ts';

const { registry } = loadFolders([fileURLToPath(new URL('../fixtures/registry', import.meta.url))]);

it('tables that would take hours are refused, until house rules are named', () => {
  expect(exportPairings(registry, { tables: true, most: 1 })).toMatchObject({
    ok: false,
    error: {
      code: 'tooManyTables',
      message: expect.stringMatching(/^Tables of \d+ pairings under 1 policy would take hours$/),
      help: expect.stringContaining('--no-tables'),
    },
  });
  expect(exportPairings(registry, { tables: true, policy: 'house', most: 1 })).toMatchObject({ ok: true });
  expect(exportPairings(registry, { tables: false, most: 1 })).toEqual({
    ok: true,
    value: { requests: [], isCut: false },
  });
});
