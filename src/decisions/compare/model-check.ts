import { resultOf } from '../../bench/methods.ts';
import { trialResults } from '../../bench/reduce-trial.ts';
import { modelledPrintTime } from '../../bench/reference-print/modelled-print.ts';
import { trialIndex } from '../../knowledge/trial-index.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import type { ModelCheck } from './job-estimate.ts';

/** How well the time model met the reference prints of a machine; null where there is none to compare it with. */
export function modelCheckOf(registry: Registry, machine: string): ModelCheck | null {
  const known = checks(registry).get(machine);
  const check = known === undefined ? newCheck(registry, machine) : known;
  checks(registry).set(machine, check);
  return check;
}

/** It is asked for each pairing of a machine. */
const checks = oncePerRegistry(() => new Map<string, ModelCheck | null>());

function newCheck(registry: Registry, machine: string): ModelCheck | null {
  const errors: number[] = [];
  const trials: string[] = [];
  for (const { id, data } of trialIndex(registry).byMachine.get(machine) ?? []) {
    const modelled = modelledPrintTime(registry, data);
    if (modelled === null) continue;
    const reduced = trialResults(registry, id);
    const printed = reduced.ok ? resultOf(reduced.value, 'printTime') : undefined;
    if (printed === undefined) continue;
    errors.push(Math.abs(modelled / printed.value - 1));
    trials.push(id);
  }
  return errors.length === 0 ? null : { prints: errors.length, largestError: Math.max(...errors), trials };
}
