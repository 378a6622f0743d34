import type { Filament, Machine, Trial } from '../registry/generated/documents.ts';
import { findNozzle, type HotEnd, type Nozzle } from '../registry/nozzle.ts';
import type { Registry } from '../registry/registry.ts';

/** What a trial was run with, as far as the registry holds it. */
export interface TrialPairing {
  readonly machine: Machine | null;
  readonly hotEnd: HotEnd | null;
  readonly nozzle: Nozzle | null;
  readonly filament: Filament | null;
}

export function pairingOfTrial(trial: Trial, registry: Registry): TrialPairing {
  const machine = registry.machine.get(trial.machine ?? '')?.data ?? null;
  const fitted = machine && findNozzle(machine, trial.nozzle ?? '');
  return {
    machine,
    hotEnd: fitted?.hotEnd ?? null,
    nozzle: fitted?.nozzle ?? null,
    filament: registry.filament.get(trial.filament)?.data ?? null,
  };
}
