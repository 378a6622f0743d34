import { finds, type ReducedQuantity, resultOf } from '../../bench/methods.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import { compareText } from '../../registry/finding.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import type { HotEnd } from '../../registry/nozzle.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Claim } from './claim.ts';
import type { ClaimEvidence } from './claim-verdict.ts';

/** The trials of a machine, the newest first; those with a nozzle of one hot end where that matters. */
export function trialsOf(registry: Registry, machine: string, hotEnd: HotEnd | null): Trial[] {
  return [...registry.trial.values()]
    .map(({ data }) => data)
    .filter(
      (trial) =>
        trial.machine === machine &&
        (hotEnd === null || hotEnd.nozzles.some(({ id }) => id === trial.nozzle)),
    )
    .sort((a, b) => compareText(b.date, a.date) || compareText(a.id, b.id));
}

/** What a trial gives for a quantity; null where it gives none. */
export function evidenceFrom(
  trial: Trial,
  quantity: ReducedQuantity,
  reduce: ReduceById,
): ClaimEvidence | null {
  if (!finds(trial.method, quantity)) return null;
  const reduced = reduce(trial.id);
  const result = reduced.ok ? resultOf(reduced.value, quantity) : undefined;
  if (result === undefined) return null;
  const { low, high } = result.interval;
  return {
    ...conditionsOfTrial(trial),
    value: result.value,
    interval: low === null || high === null ? null : { low, high },
    censored: result.censored,
    how: 'measured',
  };
}

/** What a trial was set to, as evidence that a machine reached it. */
export function settingOf(trial: Trial, value: number): ClaimEvidence {
  return { ...conditionsOfTrial(trial), value, interval: null, censored: null, how: 'set' };
}

function conditionsOfTrial(trial: Trial): Omit<ClaimEvidence, 'value' | 'interval' | 'censored' | 'how'> {
  return {
    trial: trial.id,
    simulated: trial.origin === 'simulated',
    date: trial.date,
    nozzle: trial.nozzle ?? null,
    filament: trial.filament,
    nozzleTemperature: trial.conditions.nozzleTemperature ?? null,
  };
}

/** Measured statements beside a claim whose trial is not in the registry; the trials speak for the others. */
export function measuredBeside({ beside }: Claim, registry: Registry): ClaimEvidence[] {
  return beside
    .filter(({ basis, evidence }) => basis === 'measured' && !registry.trial.has(evidence ?? ''))
    .map(({ value, interval, evidence, date, at }) => ({
      value,
      interval: interval ?? null,
      censored: null,
      how: 'measured',
      simulated: false,
      trial: evidence ?? null,
      date: date ?? null,
      nozzle: at?.nozzle ?? null,
      filament: at?.filament ?? null,
      nozzleTemperature: at?.nozzleTemperature ?? null,
    }));
}
