import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { failure, type Result } from '../result.ts';
import type { BenchProblem } from './bench-problem.ts';
import { type BenchRun, factTexts } from './bench-run.ts';
import type { Method, TrialKey } from './method.ts';
import { benchMethods } from './methods.ts';
import type { Reduction } from './reduction.ts';
import { trialObservations } from './sheet/trial-observations.ts';
import { trialRun } from './trial-run.ts';

/**
 * Reduces a trial of a registry to its results, all in canonical units. The same trial gives the same result on every
 * machine. Errors: readings that cannot be reduced, a trial that lacks what its method needs, or one whose filament
 * or density is not in the registry.
 */
export function reduceTrial(registry: Registry, trialId: string): Result<Reduction, readonly BenchProblem[]> {
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
  const method = benchMethods[trial.data.method];
  const run = trialRun(registry, trial);
  const missing = [...missingKeys(trial, method), ...missingFacts(registry, trial, method, run)];
  if (missing.length > 0) return failure(missing);
  const observations = trialObservations(trial, method);
  return observations.ok ? method.reduce(observations.value, run) : observations;
}

const keyExamples: Readonly<Record<TrialKey, string>> = {
  machine: 'machine: brackwater/lantern',
  nozzle: 'nozzle: hs-0.6',
  nozzleTemperature: 'conditions: {nozzleTemperature: 230 Cel}',
  dryingTemperature: 'conditions: {dryingTemperature: 50 Cel}',
  job: 'job: mask-rack',
};

function missingKeys({ data }: Profile<'trial'>, { method, names }: Method): BenchProblem[] {
  const given = { ...data.conditions, machine: data.machine, nozzle: data.nozzle, job: data.job };
  return names
    .filter((name) => given[name] === undefined)
    .map((name) => ({
      code: 'missingKey',
      message: `a ${method} needs \`${name}\``,
      help: `add it to the trial, for instance: ${keyExamples[name]}`,
    }));
}

function missingFacts(
  registry: Registry,
  { data }: Profile<'trial'>,
  { method, needs }: Method,
  run: BenchRun,
): BenchProblem[] {
  const missing = needs.filter((fact) => run[fact] === undefined);
  const ofFilament = missing.some((fact) => fact === 'filamentDiameter' || fact === 'density');
  if (ofFilament || !registry.filament.has(data.filament)) {
    return [
      {
        code: 'unknownFilament',
        message: `the filament "${data.filament}" of the trial, or its density, is not in the registry`,
        help: 'add the filament with its diameter and density, then reduce again',
      },
    ];
  }
  return missing.map((fact) => {
    const { what, place, example } = factTexts[fact];
    return {
      code: 'missingFact',
      message: `a ${method} needs \`${place}\`: ${what}`,
      help: `add it to the trial, such as ${example}`,
    };
  });
}
