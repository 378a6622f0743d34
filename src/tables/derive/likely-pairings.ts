import { nozzleIds } from '../../registry/nozzle.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { everyPairing, type FullRequest } from './every-pairing.ts';

/** Pairings that are all tried; of more than that those alone which something names together. */
const mostTried = 20_000;

/** Pairings that are worth a table, and whether those that nothing names together were left out. */
export interface LikelyPairings {
  readonly requests: readonly FullRequest[];
  readonly isCut: boolean;
}

/** How pairings are looked for: under one policy, and how many are tried before only likely ones are. */
interface PairingSearch {
  readonly policy?: string;
  readonly most?: number;
}

/**
 * Every pairing of a registry under each policy or the given one; of a large one those whose machine and filament a trial or a melt flow limit
 * names together, since a claim that holds for a whole family would give each machine a table for each filament of it.
 */
export function likelyPairings(
  registry: Registry,
  { policy: asked, most = mostTried }: PairingSearch = {},
): LikelyPairings {
  const policies = asked === undefined ? idsOf(registry, 'policy') : [asked];
  const nozzles = [...registry.machine.values()].reduce((sum, { data }) => sum + nozzleIds(data).length, 0);
  if (nozzles * registry.filament.size * policies.length <= most) {
    const every = everyPairing(registry, asked);
    return { requests: every.ok ? every.value : [], isCut: false };
  }
  const fitted = [...namedTogether(registry)].sort().map((key) => key.split(' '));
  const requests = policies.flatMap((policy) =>
    fitted.map(([machine = '', nozzle = '', filament = '']) => ({ machine, nozzle, filament, policy })),
  );
  return { requests, isCut: true };
}

/** `MACHINE NOZZLE FILAMENT` of what a trial or a limit names together; a space stands in no id. */
function namedTogether(registry: Registry): Set<string> {
  const named = new Set<string>();
  const add = (machine: string | undefined, nozzle: string | undefined, filament: string) => {
    const data = registry.machine.get(machine ?? '')?.data;
    if (data === undefined || !registry.filament.has(filament)) return;
    for (const id of nozzleIds(data)) {
      if ((nozzle ?? id) === id) named.add(`${data.id} ${id} ${filament}`);
    }
  };
  for (const { data } of registry.trial.values()) add(data.machine, data.nozzle, data.filament);
  for (const { id, data } of registry.filament.values()) {
    for (const { at } of data.meltFlow ?? []) add(at?.machine, at?.nozzle, id);
  }
  for (const { id, data } of registry.machine.values()) {
    for (const { at } of data.hotEnds.flatMap(({ meltFlow = [] }) => meltFlow))
      if (at?.filament !== undefined) add(id, at.nozzle, at.filament);
  }
  return named;
}
