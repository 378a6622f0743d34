/**
 * How the costs of the program compare, each as a ratio to another of the same run, so that numbers of two machines
 * or of a busy one can be held against each other.
 * Usage: npm run benchmark [-- ROUNDS]
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { checkRegistry, deriveTables, reduceTrial } from '../src/core.ts';
import { loadFolders } from '../src/host/load-registry.ts';
import { randomSource } from '../src/statistics/random.ts';
import { possibleCurves } from './reference/ladder-posterior.ts';
import { referenceLadders } from './reference/ladders.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const rounds = Number(process.argv[2] ?? 5);
const today = '2026-12-31';
const trial = 'lantern-stagecraft-pla-230';
const pairing = { machine: 'brackwater/lantern', filament: 'ashgrove/stagecraft-pla', policy: 'workshop' };

const ladder = referenceLadders().find(({ id }) => id === trial);
if (ladder === undefined) throw new Error(`no ladder ${trial}`);

const read = () => loadFolders(['profiles'], root);
const loaded = read();
const { registry } = loaded;
const reductions = new Map([...registry.trial.keys()].map((id) => [id, reduceTrial(registry, id)]));
const remembered: typeof reduceTrial = (all, id) => reductions.get(id) ?? reduceTrial(all, id);
const node = (...args: string[]) => {
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: root });
  if (status !== 0) throw new Error(`node ${args.join(' ')}: ${stderr}`);
};

/** What is timed. The rounds go through all of it in turn, so that a busy minute weighs on everything alike. */
const tasks = {
  'read the registry': read,
  'check it, reductions given': () => checkRegistry(loaded, { today, reduce: remembered }),
  'check it': () => checkRegistry(loaded, { today }),
  'reduce all of its trials': () => {
    for (const id of registry.trial.keys()) reduceTrial(registry, id);
  },
  'reduce one ladder': () => reduceTrial(registry, trial),
  'reduce it by the reference sampler': () =>
    possibleCurves(ladder.bench, ladder.tolerance, randomSource('flowLadder')),
  'derive the tables of a pairing': () => deriveTables(registry, pairing, { today }),
  'node -e 0': () => node('-e', '0'),
  'meltbounds --version': () => node('dist/cli.js', '--version'),
} as const satisfies Readonly<Record<string, () => unknown>>;

type Task = keyof typeof tasks;

const ratios: readonly (readonly [Task, Task])[] = [
  ['check it', 'check it, reductions given'],
  ['reduce all of its trials', 'check it'],
  ['check it, reductions given', 'read the registry'],
  ['reduce one ladder', 'reduce it by the reference sampler'],
  ['reduce one ladder', 'read the registry'],
  ['derive the tables of a pairing', 'read the registry'],
  ['meltbounds --version', 'node -e 0'],
];

const names = Object.keys(tasks) as Task[];
const seconds = new Map<Task, number[]>(names.map((name) => [name, []]));
for (let round = 0; round < rounds; round++) {
  for (const name of names) {
    const start = process.hrtime.bigint();
    tasks[name]();
    seconds.get(name)?.push(Number(process.hrtime.bigint() - start) / 1e9);
  }
}
const median = (name: Task) => {
  const sorted = (seconds.get(name) ?? []).toSorted((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};

console.log(
  `${registry.profiles.length} profiles, ${registry.trial.size} trials, ${rounds} rounds; medians\n`,
);
for (const [one, other] of ratios) {
  console.log(`${(median(one) / median(other)).toFixed(2).padStart(8)}  ${one} : ${other}`);
}
