import { type ReduceById, reducingOnce } from '../../bench/reducing-once.ts';
import { noPolicy, type PairingRequest } from '../../knowledge/pairing.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import { nozzleIds } from '../../registry/nozzle.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { deriveTables, type TableProblem } from './derive-tables.ts';
import type { SpeedTable } from './speed-table.ts';

/** A policy, a machine, a nozzle and a filament by their ids. */
export type FullRequest = Required<Omit<PairingRequest, 'batch'>>;

/** A pairing with its table, or why it has none. */
export interface DerivedPairing {
  readonly request: FullRequest;
  readonly table: Result<SpeedTable, TableProblem>;
}

/** Every pairing of a registry under each policy or the given one, sorted by ids. */
export function everyPairing(
  registry: Registry,
  asked?: string,
): Result<FullRequest[], UnknownProfile<'policy'> | Problem<'noPolicy'>> {
  const policies = idsOf(registry, 'policy');
  const named = asked === undefined ? null : findProfile(registry, 'policy', asked);
  if (named !== null && !named.ok) return named;
  if (policies.length === 0) return noPolicy();
  const fitted = [...registry.machine.values()]
    .toSorted((one, other) => (one.id < other.id ? -1 : 1))
    .flatMap(({ id, data }) => nozzleIds(data).map((nozzle) => ({ machine: id, nozzle })));
  const chosen = asked === undefined ? policies : [asked];
  return success(
    chosen.flatMap((policy) =>
      fitted.flatMap((machine) =>
        idsOf(registry, 'filament').map((filament) => ({ ...machine, filament, policy })),
      ),
    ),
  );
}

/**
 * Derives pairings one after the other, so that no more than one table is held; each trial is reduced once, by `reduce`
 * where it is given. Their evidence is judged on the date of today, YYYY-MM-DD.
 */
export function* deriveEach(
  registry: Registry,
  requests: readonly FullRequest[],
  today: string,
  reduce: ReduceById = reducingOnce(registry),
): Generator<DerivedPairing> {
  const options = { today, reduce: (_: Registry, trial: string) => reduce(trial) };
  for (const request of requests) yield { request, table: deriveTables(registry, request, options) };
}
