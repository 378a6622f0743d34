/** @module-tag long */
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { formatTableAsHtml } from '../../../src/tables/card/table-as-html.ts';
import { deriveTables } from '../../../src/tables/derive/derive-tables.ts';
import { everyPairing } from '../../../src/tables/derive/every-pairing.ts';
import { htmlComplaints } from '../../html-complaints.ts';

const demo = loadFolders([fileURLToPath(new URL('../../../profiles', import.meta.url))]).registry;
const pairings = everyPairing(demo);
const tables = (pairings.ok ? pairings.value : []).flatMap((request) => {
  const derived = deriveTables(demo, request, { judgesEvidence: false });
  return derived.ok ? [{ name: Object.values(request).join(' '), table: derived.value }] : [];
});

it.each(tables)('the page is valid and accessible HTML for $name', async ({ table }) => {
  expect(await htmlComplaints(formatTableAsHtml(table))).toEqual([]);
});
