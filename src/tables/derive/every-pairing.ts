import { reduceTrial } from '../../bench/reduce-trial.ts';
import { type PairingRequest, unknownId } from '../../knowledge/pairing.ts';
import { nozzleIds } from '../../registry/nozzle.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { failure, type Result, success } from '../../result.ts';
import { deriveTables } from './derive-tables.ts';
import type { SpeedTable } from './speed-table.ts';

/** A policy, a machine, a nozzle and a filament by their ids. */
export type FullRequest = Required<PairingRequest>;

/** A pairing with its table, or the sentence that says why it has none. */
export interface DerivedPairing {
  readonly request: FullRequest;
  readonly table: Result<SpeedTable, string>;
}

/** Every pairing of a registry under each policy or the given one, sorted by ids. Error: no such policy, or none at all. */
export function everyPairing(registry: Registry, asked?: string): Result<FullRequest[], string> {
  const policies = idsOf(registry, 'policy');
  if (asked !== undefined && !registry.policy.has(asked)) {
    return failure(unknownId('policy', asked, policies));
  }
  if (policies.length === 0) return failure('The registry holds no policy; add one under policies/.');
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

/** Derives pairings one after the other, so that no more than one table is held; each trial is reduced once. */
export function* deriveEach(registry: Registry, requests: readonly FullRequest[]): Generator<DerivedPairing> {
  const known = new Map<string, ReturnType<typeof reduceTrial>>();
  const reduce = (_: Registry, trial: string) => {
    const reduced = known.get(trial) ?? reduceTrial(registry, trial);
    known.set(trial, reduced);
    return reduced;
  };
  for (const request of requests) yield { request, table: deriveTables(registry, request, { reduce }) };
}
