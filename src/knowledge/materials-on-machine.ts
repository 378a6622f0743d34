import type { Filament, Machine, Polymer } from '../registry/generated/documents.ts';
import type { Registry } from '../registry/registry.ts';
import { familiesOf } from './families.ts';
import { trialIndex } from './trial-index.ts';

/** The filaments that trials have run on a machine, each once. */
function filamentsOnMachine(machine: Machine, registry: Registry): readonly Filament[] {
  const trials = trialIndex(registry).byMachine.get(machine.id) ?? [];
  const ids = new Set(trials.map(({ data }) => data.filament));
  return [...ids].flatMap((id) => registry.filament.get(id)?.data ?? []);
}

/** The polymer families that trials have run on a machine or that flows are stated for, each once. */
export function familiesOnMachine(machine: Machine, registry: Registry): readonly Polymer[] {
  const statements = machine.hotEnds.flatMap(({ meltFlow }) => meltFlow ?? []);
  const named = statements.flatMap(({ at }) => registry.polymer.get(at?.polymer ?? '')?.data ?? []);
  const run = filamentsOnMachine(machine, registry).flatMap((filament) => familiesOf(filament, registry));
  return [...new Set([...run, ...named])];
}
