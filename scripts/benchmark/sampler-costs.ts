import { reduceInputs, reductionQuestion } from '../../src/bench/reduce-trial.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { randomSource } from '../../src/statistics/random.ts';
import { possibleCurves } from '../reference/ladder-posterior.ts';
import { referenceLadders } from '../reference/ladders.ts';

/**
 * What the flow ladders of the demo cost, as a ratio to the sampler that the project began with, and what the slowest trial
 * of the other methods takes, in ms of processor time.
 */
export function samplerCosts(): { readonly sampler: number; readonly others: number } {
  const { registry } = loadFolders(['profiles']);
  const inputs = [...registry.trial.keys()].flatMap((id) => {
    const question = reductionQuestion(registry, id);
    return question.ok ? [question.value.inputs] : [];
  });
  const isLadder = (input: (typeof inputs)[number]) => input[0] === 'flowLadder';
  const ids = new Set(registry.trial.keys());
  const ladders = referenceLadders().filter(({ id }) => ids.has(id));
  // The first time around the machine code is made.
  for (const input of inputs) reduceInputs(input);
  const reduced = cost(() => {
    for (const input of inputs.filter(isLadder)) reduceInputs(input);
  });
  const sampled = cost(() => {
    for (const { id, bench, tolerance } of ladders) possibleCurves(bench, tolerance, randomSource(id));
  });
  const others = inputs
    .filter((input) => !isLadder(input))
    .map((input) => settledCost(() => reduceInputs(input)));
  return { sampler: reduced / sampled, others: Math.max(...others) };
}

/** Runs after which a method's machine code is made; making it costs more than any one of them. */
const warmingRuns = 15;

/** Processor time in milliseconds of the middle one of some runs: what collects garbage falls into any of them. */
function settledCost(run: () => unknown): number {
  for (let index = 0; index < warmingRuns; index++) run();
  const costs = Array.from({ length: 7 }, () => cost(run)).sort((a, b) => a - b);
  return costs[3] ?? Number.NaN;
}

/** Processor time in milliseconds. */
function cost(run: () => unknown): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
