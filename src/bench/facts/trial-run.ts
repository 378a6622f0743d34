import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { BenchRun, Facts } from './fact.ts';

/** What a trial and its filament say of the facts that a method can use, in canonical units. */
export function trialRun(registry: Registry, { data }: Profile<'trial'>, facts: Facts): BenchRun {
  const filament = registry.filament.get(data.filament)?.data;
  const known = Object.entries(facts).flatMap(([name, fact]) => {
    const value = fact.read(data, filament);
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(known);
}
