/**
 * How many slips of the pen the validator catches: plants them one at a time into the demo registry and checks it.
 * Usage: tsx scripts/slips.ts [--seed TEXT] [--limit SLIPS_OF_A_KIND] [--kind KIND]... [--list-missed]
 */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { randomSource } from '../src/statistics/random.ts';
import { quantitySlips } from './slips/quantity-slips.ts';
import { readingSlips } from './slips/reading-slips.ts';
import { printReport } from './slips/report.ts';
import { type Slip, slipKinds } from './slips/slip.ts';
import { openRegistry } from './slips/slipped-registry.ts';
import { structureSlips } from './slips/structure-slips.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: 'slips' },
    limit: { type: 'string', default: '1000000' },
    kind: { type: 'string', multiple: true, default: [...slipKinds] },
    'list-missed': { type: 'boolean', default: false },
  },
});

/** As many of the slips as the limit allows, of each kind, drawn without replacement. */
function sampled(slips: readonly Slip[], limit: number, seed: string): Slip[] {
  return slipKinds
    .filter((kind) => values.kind.includes(kind))
    .flatMap((kind) => {
      const random = randomSource(`${seed} ${kind}`);
      return slips
        .filter((slip) => slip.kind === kind)
        .map((slip) => ({ slip, lot: random.uniform() }))
        .sort((a, b) => a.lot - b.lot)
        .slice(0, limit)
        .map(({ slip }) => slip);
    });
}

const folder = fileURLToPath(new URL('../profiles', import.meta.url));
const good = openRegistry({ folder, shown: 'profiles' }, new Date().toISOString().slice(0, 10));
const planted = good.registry.profiles.flatMap((profile) => {
  const random = randomSource(`${values.seed} ${profile.source.relativePath}`);
  return [
    ...quantitySlips(profile, random),
    ...structureSlips(profile, good.registry, random),
    ...readingSlips(profile),
  ];
});
const slips = sampled(planted, Number(values.limit), values.seed);
const outcomes = slips.map((slip, index) => {
  if (process.stderr.isTTY) process.stderr.write(`\r${index + 1} of ${slips.length} slips`);
  return good.plant(slip);
});
if (process.stderr.isTTY) process.stderr.write('\n');
printReport(outcomes, good.findings.length, values['list-missed']);
