import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { mutationTable } from './mutation-table.ts';

// Usage: npm run mutation -- [--room units] [--files 'round*.ts,range-form.ts'] [--tests 'parse|unit'] [--static] [--changed]
const { values } = parseArgs({
  options: {
    room: { type: 'string', default: 'units' },
    files: { type: 'string', default: '**/*.ts' },
    /** A pattern of the files of tests that are asked; with fewer of them more mutants live. */
    tests: { type: 'string', default: '' },
    /** Also what runs once as a module is loaded, such as the table of units: each mutant loads everything anew. */
    static: { type: 'boolean', default: false },
    /** Only what has changed, in the room or its tests, since the last run with this option; the report holds the rest too. */
    changed: { type: 'boolean', default: false },
  },
});

/** The tests that are asked whether they notice a change: those of the room, and published checks of what it holds. */
const testsOf: Readonly<Record<string, RegExp>> = {
  // What the schema of quantities takes is asked of a file that is generated.
  units: /^(?:units\/(?!quantity-schema)|published\/units-sp811)/,
  statistics: /^(?:statistics\/|published\/(?:statistics-|chi-squared))/,
  evidence: /^(?:rules\/)?evidence\//,
};

const asked = testsOf[values.room];
if (asked === undefined) throw new Error(`the rooms are ${Object.keys(testsOf).join(', ')}`);
const root = fileURLToPath(new URL('../..', import.meta.url));
const tests = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts') && asked.test(file) && new RegExp(values.tests).test(file))
  .map((file) => `tests/${file}`)
  .toSorted();
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
    incremental: values.changed,
    incrementalFile: join(made, `${values.room}.known.json`),
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
