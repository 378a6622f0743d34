import type * as ReduceTrial from '../src/bench/reduce-trial.ts';

/**
 * The module that reduces trials, remembering what it has reduced: many tests look at the same readings again and
 * again. For `vi.mock`.
 */
export function reducingOnce(original: typeof ReduceTrial): typeof ReduceTrial {
  const known = new Map<string, ReturnType<typeof ReduceTrial.reduceTrial>>();
  return {
    ...original,
    reduceTrial: (registry, id) => {
      const trial = registry.trial.get(id);
      const filament = registry.filament.get(trial?.data.filament ?? '');
      const key = JSON.stringify([trial?.data, trial?.attachment, filament?.data]);
      const reduced = known.get(key) ?? original.reduceTrial(registry, id);
      known.set(key, reduced);
      return reduced;
    },
  };
}
