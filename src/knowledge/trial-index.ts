import { groupedBy } from '../registry/grouped-by.ts';
import type { Profile } from '../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../registry/registry.ts';
import type { FittedPairing } from './pairing.ts';

interface TrialIndex {
  readonly byMachine: ReadonlyMap<string, readonly Profile<'trial'>[]>;
  readonly byFilament: ReadonlyMap<string, readonly Profile<'trial'>[]>;
  /** Reference prints; no other trial names a job. */
  readonly byJob: ReadonlyMap<string, readonly Profile<'trial'>[]>;
}

/** The trials of a registry by the machine, the filament and the job that they name. */
export const trialIndex = oncePerRegistry<TrialIndex>((registry) => {
  const trials = [...registry.trial.values()];
  return {
    byMachine: groupedBy(trials, ({ data }) => data.machine ?? ''),
    byFilament: groupedBy(trials, ({ data }) => data.filament),
    byJob: groupedBy(trials, ({ data }) => data.job ?? ''),
  };
});

/**
 * The trials that were run with a pairing, in the order of their files; one that names no machine, such as a drying
 * curve, belongs to every pairing of its filament.
 */
export function trialsOfPairing(
  registry: Registry,
  { machine, nozzle, filament }: FittedPairing,
): Profile<'trial'>[] {
  return (trialIndex(registry).byFilament.get(filament.id) ?? []).filter(
    ({ data }) => (data.machine ?? machine.id) === machine.id && (data.nozzle ?? nozzle.id) === nozzle.id,
  );
}
