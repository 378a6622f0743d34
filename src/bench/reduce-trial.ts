import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { noMemory, type Question, type ResultMemory } from '../registry/result-memory.ts';
import { failure, type Result, success } from '../result.ts';
import type { BenchProblem } from './bench-problem.ts';
import { type BenchRun, trialRun } from './facts/fact.ts';
import { unreadFacts, valueAt } from './facts/fact-problems.ts';
import type { Method } from './method.ts';
import type { MethodName } from './method-facts.ts';
import { methodOf } from './methods.ts';
import type { Reduction, TrialResults } from './reduction.ts';
import type { Observations } from './sheet/observations.ts';
import { trialObservations } from './sheet/trial-observations.ts';

/** What is remembered of the trials of a registry; without it each is reduced when it is asked for. */
const memories = new WeakMap<Registry, Pick<ResultMemory, 'recall'>>();

/** Lets the trials of a registry be looked up in a memory before they are reduced. */
export function rememberReductions(registry: Registry, memory: ResultMemory): void {
  memories.set(registry, memory);
}

/**
 * Reduces a trial of a registry to its results, all in canonical units. The same trial gives the same result on every
 * machine. Errors: readings that cannot be reduced, a trial that lacks what its method needs or states it in a form that cannot
 * be read, or one whose filament or density is not in the registry.
 */
export function reduceTrial(registry: Registry, trialId: string): Result<Reduction, readonly BenchProblem[]> {
  const question = reductionQuestion(registry, trialId);
  if (!question.ok) return question;
  const trial = registry.trial.get(trialId);
  const unread = trial === undefined ? [] : unreadFacts(trial, methodOf(trial.data.method).facts);
  return unread.length > 0 ? failure(unread) : reduceInputs(question.value.inputs);
}

/** What `reduceTrial` finds, without what there is to draw: looked up where it is remembered. */
export function trialResults(
  registry: Registry,
  trialId: string,
): Result<TrialResults, readonly BenchProblem[]> {
  const question = reductionQuestion(registry, trialId);
  return question.ok ? (memories.get(registry) ?? noMemory).recall(question.value) : question;
}

/** All that the reduction of a trial depends on. */
export type ReductionInputs = readonly [method: MethodName, observations: Observations, run: BenchRun];

/** Reduces readings by a method, whatever registry they come from. */
export function reduceInputs([name, observations, run]: ReductionInputs): ReturnType<Method['reduce']> {
  return methodOf(name).reduce(observations, run);
}

/** What readings tell by a method, without what there is to draw. */
export function resultsOf(inputs: ReductionInputs): Result<TrialResults, readonly BenchProblem[]> {
  const reduced = reduceInputs(inputs);
  if (!reduced.ok) return reduced;
  const { method, results, warnings } = reduced.value;
  return success({ method, results, warnings });
}

/** The results of a trial as a question to a memory. Errors: those of `reduceTrial` that come before the method. */
export function reductionQuestion(
  registry: Registry,
  trialId: string,
): Result<
  Question<Result<TrialResults, readonly BenchProblem[]>> & { readonly inputs: ReductionInputs },
  readonly BenchProblem[]
> {
  const trial = registry.trial.get(trialId);
  if (trial === undefined) {
    return failure([
      {
        code: 'unknownTrial',
        message: `there is no usable trial "${trialId}" in the registry`,
        help: 'check the id, and check the trial with `meltbounds check`',
      },
    ]);
  }
  const method = methodOf(trial.data.method);
  const run = trialRun(registry, trial, method.facts);
  const missing = [...missingKeys(trial, method), ...missingFacts(registry, trial, method, run)];
  if (missing.length > 0) return failure(missing);
  const observations = trialObservations(trial, method);
  if (!observations.ok) return observations;
  const inputs: ReductionInputs = [method.method, observations.value, run];
  return success({ kind: 'reduction', name: trialId, inputs, compute: () => resultsOf(inputs) });
}

function missingKeys({ data }: Profile<'trial'>, { method, requiredKeys }: Method): BenchProblem[] {
  return requiredKeys
    .filter(({ path }) => valueAt(data, path) === undefined)
    .map(({ name, example }) => ({
      code: 'missingKey',
      message: `a ${method} needs \`${name}\``,
      help: `add it to the trial, for instance: ${example}`,
    }));
}

function missingFacts(
  registry: Registry,
  { data }: Profile<'trial'>,
  { method, facts, requiredFacts }: Method,
  run: BenchRun,
): BenchProblem[] {
  const missing = requiredFacts
    .filter((name) => run[name] === undefined)
    .flatMap((name) => facts[name] ?? []);
  const ofFilament = missing.some(({ statedIn }) => statedIn === 'filament');
  if (ofFilament || !registry.filament.has(data.filament)) {
    return [
      {
        code: 'unknownFilament',
        message: `the filament "${data.filament}" of the trial, or its density, is not in the registry`,
        help: 'add the filament with its diameter and density, then reduce again',
      },
    ];
  }
  return missing.map(({ what, place, example }) => ({
    code: 'missingFact',
    message: `a ${method} needs \`${place}\`: ${what}`,
    help: `add it to the trial, such as ${example}`,
  }));
}
