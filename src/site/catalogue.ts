import { reduceTrial } from '../bench/reduce-trial.ts';
import type { Registry } from '../registry/registry.ts';
import type { OmittedPairing } from '../tables/write/table-index.ts';
import type { CataloguedPairing } from './catalogued-pairing.ts';

/** What every page may ask for. */
export interface Catalogue {
  readonly registry: Registry;
  readonly pairings: readonly CataloguedPairing[];
  readonly omitted: readonly OmittedPairing[];
  /** Whether pairings that nothing names together were left out, since there are too many. */
  readonly isCut: boolean;
  /** The reduction of a trial, made once. */
  readonly reductionOf: (trial: string) => ReturnType<typeof reduceTrial>;
}

/** Reductions of a registry that are kept, since a trial has a page of its own and stands in those of its pairing. */
export function reductionsOf(registry: Registry): Catalogue['reductionOf'] {
  const known = new Map<string, ReturnType<typeof reduceTrial>>();
  return (trial) => {
    const reduction = known.get(trial) ?? reduceTrial(registry, trial);
    known.set(trial, reduction);
    return reduction;
  };
}
