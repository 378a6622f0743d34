import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { mutationTable } from './mutation-table.ts';

// Usage: npm run mutation -- [--room units] [--files 'round*.ts,range-form.ts'] [--static]
const { values } = parseArgs({
  options: {
    room: { type: 'string', default: 'units' },
    files: { type: 'string', default: '**/*.ts' },
    /** Also what runs once as a module is loaded, such as the table of units: each mutant loads everything anew. */
    static: { type: 'boolean', default: false },
  },
});

/** The tests that are asked whether they notice a change: those of the room, and published checks of what it holds. */
const testsOf: Readonly<Record<string, readonly string[]>> = {
  units: ['tests/units/*.test.ts', 'tests/published/units-sp811.test.ts'],
  statistics: [
    'tests/statistics/*.test.ts',
    'tests/published/statistics-*.test.ts',
    'tests/published/chi-squared.test.ts',
  ],
  evidence: ['tests/evidence/*.test.ts', 'tests/rules/evidence/*.test.ts'],
};

const tests = testsOf[values.room];
if (tests === undefined) throw new Error(`the rooms are ${Object.keys(testsOf).join(', ')}`);
const root = fileURLToPath(new URL('../..', import.meta.url));
const own = join(root, 'scripts/mutation');
// Its packages need a newer Node than the project, so they are no part of the project's own.
if (!existsSync(join(own, 'node_modules'))) {
  execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: own, stdio: 'inherit' });
}
const made = join(root, '.mutation');
mkdirSync(made, { recursive: true });
const report = join(made, `${values.room}.json`);
const config = join(made, `${values.room}.config.json`);
const usual = JSON.parse(readFileSync(join(own, 'stryker.config.json'), 'utf8')) as object;
writeFileSync(
  config,
  JSON.stringify({
    ...usual,
    ignoreStatic: !values.static,
    mutate: values.files.split(',').map((file) => `src/${values.room}/${file}`),
    jsonReporter: { fileName: report },
    tempDirName: join('.mutation', `sandbox-${values.room}`),
  }),
);
const node = join(own, 'node_modules/.bin/node');
execFileSync(node, [join(own, 'node_modules/@stryker-mutator/core/bin/stryker.js'), 'run', config], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, MUTATION_TESTS: tests.join(',') },
});
console.log(mutationTable(readFileSync(report, 'utf8')));
