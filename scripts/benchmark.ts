/**
 * What the program costs, each time as a ratio to something else of the same run, so that numbers of two machines, or of a
 * busy one, can be compared.
 * Usage: npm run benchmark [-- PROFILES [ROUNDS]]
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Cost, costOfNode } from './benchmark/cpu-of-process.ts';
import { samplerCosts } from './benchmark/sampler-costs.ts';
import { simulateScale } from './scale/simulate-scale.ts';

const [profiles = 10_000, rounds = 3] = process.argv.slice(2).map(Number);
const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'meltbounds-benchmark-'));
const large = join(folder, 'large');
const program = join(root, 'dist', 'cli.cjs');
const loop = join(root, 'scripts', 'benchmark', 'plain-loop.mjs');
const one = 'profiles/filaments/ashgrove/stagecraft-pla.yaml';

const count = simulateScale(large, profiles, false);
const node = (args: readonly string[], cwd = root) => costOfNode(args, cwd, join(folder, 'cache'));
const check = (cwd: string, ...args: string[]) =>
  node([program, 'check', '--today', '2026-12-31', ...args], cwd);

/** What is timed, in rounds, so that a busy minute weighs on everything alike. */
const tasks = {
  'node -e 0': () => node(['-e', '0']),
  '--help of the program': () => node([program, '--help']),
  '--help of check': () => node([program, 'check', '--help']),
  '--help of reduce': () => node([program, 'reduce', '--help']),
  'check of one file of the demo, nothing remembered': () => check(root, one, '--no-remember'),
  'check of one file of the demo, remembered': () => check(root, one),
  'check of the demo, nothing remembered': () => check(root, '--no-remember'),
  'check of the demo, remembered': () => check(root),
  'loop of js-yaml and ajv over the large registry': () => node([loop, 'js-yaml', 'profiles'], large),
  'loop of yaml and ajv over it': () => node([loop, 'yaml', 'profiles'], large),
  'check of it, nothing remembered': () => check(large, '--no-remember'),
  'check of it, remembered': () => check(large),
} as const satisfies Readonly<Record<string, () => Cost>>;

type Task = keyof typeof tasks;

const empty = 'node -e 0';
const plain = 'loop of js-yaml and ajv over the large registry';
/** What is compared with what, and the most that it is to take. */
const ratios: readonly (readonly [Task, Task, number | null])[] = [
  ['--help of the program', empty, 2],
  ['--help of check', empty, 2],
  ['--help of reduce', empty, 2],
  ['check of one file of the demo, nothing remembered', empty, 10],
  ['check of one file of the demo, remembered', empty, 5],
  ['check of the demo, nothing remembered', empty, 18],
  ['check of the demo, remembered', empty, 8],
  ['loop of yaml and ajv over it', plain, null],
  ['check of it, nothing remembered', plain, 4],
  ['check of it, remembered', plain, 1.5],
];

const names = Object.keys(tasks) as Task[];
const costs = new Map<Task, Cost[]>(names.map((name) => [name, []]));
try {
  // The first runs fill what is remembered.
  for (const remembered of [() => check(root, one), () => check(root), () => check(large)]) remembered();
  for (let round = 0; round < rounds; round++) {
    for (const name of names) costs.get(name)?.push(tasks[name]());
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function median(name: Task, part: keyof Cost): number {
  const sorted = (costs.get(name) ?? []).map((cost) => cost[part]).sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

const line = (ratio: number, most: number | null, text: string) =>
  console.log(`| ${text} | ${ratio < 100 ? ratio.toPrecision(2) : Math.round(ratio)} | ${most ?? ''} |`);

console.log(`Medians of ${rounds} rounds; the large registry has ${count} profiles without readings.\n`);
console.log('| processor time of | ratio | to reach |\n| --- | --- | --- |');
for (const [name, other, most] of ratios)
  line(median(name, 'cpu') / median(other, 'cpu'), most, `${name} : ${other}`);
const { sampler, others } = samplerCosts();
line(sampler, 0.1, 'one flow ladder : the same by the sampler that the project began with');
console.log('\n| | measured | to reach |\n| --- | --- | --- |');
const whole = 'check of it, nothing remembered';
line(median(whole, 'wall') / median(plain, 'wall'), 1, `wall time of ${whole} : ${plain}`);
line(median(whole, 'memory'), 300, `memory of ${whole}, MB`);
line(others, 20, 'slowest trial of the other methods, ms');
