import type { Pairing } from '../../knowledge/pairing.ts';
import type { Registry } from '../../registry/registry.ts';
import { usableFlow } from './conditions/nozzle-rows.ts';
import type { PairingLimits } from './limits/pairing-limits.ts';
import type { LargestFlow } from './speed-table.ts';

/** The largest flow at the nozzle temperature of a table, with its interval and the trials that show it. */
export function largestFlowOf(registry: Registry, pairing: Pairing, limits: PairingLimits): LargestFlow {
  const { print, chosenBy } = limits;
  const trials = print.limits.flatMap(({ ground: { evidence } }) => {
    const trial = evidence === null ? undefined : registry.trial.get(evidence);
    return trial === undefined
      ? []
      : [{ id: trial.id, date: trial.data.date, isSimulated: trial.data.origin === 'simulated' }];
  });
  return {
    limit: print.value,
    interval: print.interval,
    usable: usableFlow(pairing, print, limits.traction.print),
    basis: print.basis,
    acceptedDeficit: print.acceptedDeficit,
    trials: trials.map(({ id, date }) => ({ id, date })),
    isSimulated: trials.some(({ isSimulated }) => isSimulated),
    note: print.line === null ? (print.limits[0]?.note ?? null) : null,
    isInterpolated: print.line !== null,
    chosenBy,
  };
}
