import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { sha256Of } from '../src/text/sha256.ts';
import { fuzzAreas } from './fuzz/areas.ts';
import { fuzzArea } from './fuzz/fuzz-area.ts';

// Usage: npm run fuzz -- [--cases 20000] [--seed SEED] [--area NAME]
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '20000' },
    seed: { type: 'string', default: 'strangers' },
    area: { type: 'string' },
  },
});

const asked = fuzzAreas.filter(({ name }) => values.area === undefined || name === values.area);
if (asked.length === 0) throw new Error(`the areas are ${fuzzAreas.map(({ name }) => name).join(', ')}`);
const shares = asked.reduce((sum, { share }) => sum + share, 0);
let crashes = 0;
console.log('| area | cases | accepted | crashes | per second |\n| --- | ---: | ---: | ---: | ---: |');
for (const area of asked) {
  const begun = process.cpuUsage();
  const count = fuzzArea(area, Math.round((Number(values.cases) * area.share) / shares), values.seed);
  const { user, system } = process.cpuUsage(begun);
  const rate = Math.round((count.cases * 1e6) / (user + system));
  console.log(`| ${area.name} | ${count.cases} | ${count.accepted} | ${count.crashes.length} | ${rate} |`);
  crashes += count.crashes.length;
  const folder = fileURLToPath(new URL(`../tests/fuzz/${area.name.replaceAll(' ', '-')}/`, import.meta.url));
  for (const { text, error } of count.crashes) {
    // Whoever mends the fault keeps one text of each, under a name that says what it is.
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}new-${sha256Of(text).slice(0, 12)}.txt`, text);
    console.error(`${area.name}: ${error}\n${JSON.stringify(text).slice(0, 500)}`);
  }
}
process.exitCode = crashes === 0 ? 0 : 1;
