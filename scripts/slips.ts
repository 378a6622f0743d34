/**
 * How many slips of the pen the validator catches: plants them one at a time into registries that are in order, and checks each.
 * Usage: tsx scripts/slips.ts [--seed TEXT] [--limit SLIPS_OF_A_KIND] [--kind KIND]... [--base demo|varied|corpus]...
 *   [--list-missed] [--list-late] [--markdown]
 */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { trueTexts } from '../tests/true-profiles/true-profiles.ts';
import { markdownTables } from './slips/markdown-table.ts';
import { openRegistry } from './slips/planted-registry.ts';
import { plantedSlips, sampledSlips } from './slips/planted-slips.ts';
import { readTexts } from './slips/read-texts.ts';
import { printLate, printMissed, printTable } from './slips/report.ts';
import type { Texts } from './slips/slip.ts';
import { slipKindNames } from './slips/slip-kinds.ts';
import { tallies } from './slips/tally.ts';
import { variedRegistry } from './slips/varied-registry.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: 'slips' },
    limit: { type: 'string', default: '1000000' },
    kind: { type: 'string', multiple: true, default: [...slipKindNames] },
    base: { type: 'string', multiple: true, default: ['demo', 'varied'] },
    'list-missed': { type: 'boolean', default: false },
    'list-late': { type: 'boolean', default: false },
    markdown: { type: 'boolean', default: false },
  },
});

const today = new Date().toISOString().slice(0, 10);
const folder = fileURLToPath(new URL('../profiles', import.meta.url));
const demo = readTexts(folder);
const textsOf: Readonly<Record<string, () => Texts>> = {
  demo: () => demo,
  varied: () => variedRegistry(demo, values.seed, today),
  corpus: trueTexts,
};
const outcomes = values.base.flatMap((name) => {
  const texts = textsOf[name];
  if (texts === undefined) throw new Error(`there is no base "${name}"`);
  const base = openRegistry(name, texts(), today);
  // Other victims in each registry, so that what is counted of one says nothing of another.
  const seed = `${values.seed} ${name}`;
  const slips = sampledSlips(plantedSlips(base.registry, seed), {
    limit: Number(values.limit),
    seed,
    kinds: slipKindNames.filter((kind) => values.kind.includes(kind)),
  });
  process.stderr.write(
    `${base.name}: ${base.findings.length} findings without a slip, ${slips.length} slips\n`,
  );
  return slips.map((slip, index) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${index + 1} of ${slips.length} slips`);
    return base.plant(slip);
  });
});
if (values.markdown) console.log(markdownTables(tallies(outcomes)));
else printTable(outcomes);
if (values['list-missed']) printMissed(outcomes);
if (values['list-late']) printLate(outcomes);
