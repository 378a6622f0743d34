import type { Registry } from '../registry/registry.ts';
import { trialResults } from './reduce-trial.ts';

/** Reduces a trial of a registry that is settled; `trialResults` says what comes back. */
export type ReduceById = (trialId: string) => ReturnType<typeof trialResults>;

/** Reduces each trial of a registry when it is first asked for, and remembers what came of it. */
export function reducingOnce(registry: Registry, reduce: typeof trialResults = trialResults): ReduceById {
  const known = new Map<string, ReturnType<ReduceById>>();
  return (trialId) => {
    const reduced = known.get(trialId) ?? reduce(registry, trialId);
    known.set(trialId, reduced);
    return reduced;
  };
}
