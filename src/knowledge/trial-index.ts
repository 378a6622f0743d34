import { groupedBy } from '../registry/grouped-by.ts';
import type { Profile } from '../registry/profile.ts';
import { oncePerRegistry } from '../registry/registry.ts';

interface TrialIndex {
  readonly byMachine: ReadonlyMap<string, readonly Profile<'trial'>[]>;
  readonly byFilament: ReadonlyMap<string, readonly Profile<'trial'>[]>;
}

/** The trials of a registry by the machine and by the filament that they name. */
export const trialIndex = oncePerRegistry<TrialIndex>((registry) => {
  const trials = [...registry.trial.values()];
  return {
    byMachine: groupedBy(trials, ({ data }) => data.machine ?? ''),
    byFilament: groupedBy(trials, ({ data }) => data.filament),
  };
});
