import { idsOf, type Registry } from '../registry/registry.ts';
import type { FullRequest } from '../tables/derive/every-pairing.ts';
import { likelyPairings } from '../tables/derive/likely-pairings.ts';

/** Pairings that could be thought of up to which each is tried, under each of the house rules. */
const mostThoughtOf = 2000;

/** Tables that are tried at most: with so many pairings that more would follow, the first house rules alone have pages. */
const mostTables = 20_000;

/** A machine, a nozzle and a filament by their ids. */
type Fitted = Omit<FullRequest, 'policy'>;

/** Pairings that are worth a page under each of some house rules. */
export interface WorthAPage {
  readonly fitted: readonly Fitted[];
  /** Whether pairings that nothing names together were left out. */
  readonly isCut: boolean;
  /** House rules under which pairings have pages, in the order of their ids. */
  readonly policies: readonly string[];
}

/**
 * The pairings that have pages, if a table follows for them: those whose machine and filament a trial or a limit names together, so
 * that there are as many as there is evidence. In a small registry also those of which nothing is known but what the
 * machine claims for a whole family; in a large one each filament of the family would have such a page for each machine.
 */
export function worthAPage(registry: Registry, asked: readonly string[] = []): WorthAPage {
  const all = asked.length > 0 ? [...new Set(asked)] : idsOf(registry, 'policy').toSorted();
  const [first] = all;
  if (first === undefined) return { fitted: [], isCut: false, policies: [] };
  const { requests, isCut } = likelyPairings(registry, { policy: first, most: mostThoughtOf });
  const room = Math.max(1, Math.floor(mostTables / Math.max(1, requests.length)));
  const policies = asked.length > 0 ? all : all.slice(0, room);
  const fitted = requests.map(({ policy: _, ...rest }) => rest);
  return { fitted, isCut, policies };
}
