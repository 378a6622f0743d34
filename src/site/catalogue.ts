import type { reduceTrial } from '../bench/reduce-trial.ts';
import type { Registry } from '../registry/registry.ts';
import type { OmittedPairing } from '../tables/write/table-index.ts';
import type { CataloguedPairing } from './catalogued-pairing.ts';

/** What every page may ask for. */
export interface Catalogue {
  readonly registry: Registry;
  readonly pairings: readonly CataloguedPairing[];
  readonly omitted: readonly OmittedPairing[];
  /** House rules under which pairings have pages. */
  readonly policies: readonly string[];
  /** Whether pairings that nothing names together were left out, since there are too many. */
  readonly isCut: boolean;
}

/** What pages that show readings may ask for. */
export interface ReducedCatalogue {
  readonly registry: Registry;
  /** The reduction of a trial; its curve is worked out once. */
  readonly reductionOf: (trial: string) => ReturnType<typeof reduceTrial>;
}
