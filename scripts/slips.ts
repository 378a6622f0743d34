/**
 * How many slips of the pen the validator catches: plants them one at a time into the demo registry and checks it.
 * Usage: tsx scripts/slips.ts [--seed TEXT] [--limit SLIPS_OF_A_KIND] [--kind KIND]... [--list-missed] [--markdown]
 */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { markdownTable } from './slips/markdown-table.ts';
import { plantedSlips, sampledSlips } from './slips/planted-slips.ts';
import { printReport } from './slips/report.ts';
import { slipKinds } from './slips/slip.ts';
import { openRegistry } from './slips/slipped-registry.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: 'slips' },
    limit: { type: 'string', default: '1000000' },
    kind: { type: 'string', multiple: true, default: [...slipKinds] },
    'list-missed': { type: 'boolean', default: false },
    markdown: { type: 'boolean', default: false },
  },
});

const folder = fileURLToPath(new URL('../profiles', import.meta.url));
const good = openRegistry({ folder, shown: 'profiles' }, new Date().toISOString().slice(0, 10));
const slips = sampledSlips(plantedSlips(good.registry, values.seed), {
  limit: Number(values.limit),
  seed: values.seed,
  kinds: slipKinds.filter((kind) => values.kind.includes(kind)),
});
const outcomes = slips.map((slip, index) => {
  if (process.stderr.isTTY) process.stderr.write(`\r${index + 1} of ${slips.length} slips`);
  return good.plant(slip);
});
if (process.stderr.isTTY) process.stderr.write('\n');
if (values.markdown) console.log(markdownTable(outcomes));
else printReport(outcomes, good.findings.length, values['list-missed']);
