import { finds, methodOf, type ReducedQuantity, resultOf } from '../../bench/methods.ts';
import { trialObservations } from '../../bench/sheet/trial-observations.ts';
import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import { standingOf, trialStanding } from '../../evidence/standing.ts';
import type { CheckedPart } from '../../knowledge/part-offset.ts';
import { compareText } from '../../registry/finding.ts';
import type { HotEnd } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { statementsOf } from '../../registry/statement.ts';
import type { Claim } from './claim.ts';
import type { ClaimEvidence } from './claim-verdict.ts';

/** The trials of a machine, the newest first; those with a nozzle of one hot end where that matters. */
export function trialsOf(registry: Registry, machine: string, hotEnd: HotEnd | null): Profile<'trial'>[] {
  return [...registry.trial.values()]
    .filter(
      ({ data }) =>
        data.machine === machine && (hotEnd === null || hotEnd.nozzles.some(({ id }) => id === data.nozzle)),
    )
    .sort((a, b) => compareText(b.data.date, a.data.date) || compareText(a.id, b.id));
}

/** What a trial gives for a quantity; null where it gives none. */
export function evidenceFrom(
  trial: Profile<'trial'>,
  quantity: ReducedQuantity,
  context: EvidenceContext,
): ClaimEvidence | null {
  if (!finds(trial.data.method, quantity)) return null;
  const reduced = context.reduce(trial.id);
  const result = reduced.ok ? resultOf(reduced.value, quantity) : undefined;
  if (result === undefined) return null;
  const { low, high } = result.interval;
  return {
    ...conditionsOfTrial(trial, context),
    value: result.value,
    interval: low === null || high === null ? null : { low, high },
    censored: result.censored,
    how: 'measured',
  };
}

/** The columns, and conditions, in which timed moves say what was commanded. */
const commandedBy = {
  reachedSpeed: { column: 'commandedSpeed', condition: null },
  reachedAcceleration: { column: 'acceleration', condition: 'acceleration' },
} as const;

/** Share of what was commanded from which on it counts as reached: a stop watch and a rule are good to that. */
const reachedShare = 0.98;

/**
 * What timed moves say of a claimed speed or acceleration, in the order of the trials. A machine that reached what it was told to
 * shows that much at least: where less than the claim was commanded, the run ended there.
 */
export function reachedBy(
  trials: readonly Profile<'trial'>[],
  quantity: keyof typeof commandedBy,
  claimed: number,
  context: EvidenceContext,
): ClaimEvidence[] {
  return trials.flatMap((trial) => {
    const evidence = evidenceFrom(trial, quantity, context);
    if (evidence === null) return [];
    const commanded = highestCommanded(trial, quantity);
    const isAsked = commanded >= claimed;
    const isReached = (evidence.interval?.high ?? evidence.value) >= reachedShare * commanded;
    return [isAsked || !isReached ? evidence : { ...evidence, censored: 'above' as const }];
  });
}

function highestCommanded(trial: Profile<'trial'>, quantity: keyof typeof commandedBy): number {
  const { column, condition } = commandedBy[quantity];
  const stated = condition === null ? undefined : trial.data.conditions[condition];
  return Math.max(highestOf(trial, column), stated ?? Number.NEGATIVE_INFINITY);
}

/** The highest value of a column; that of nothing where there is none. */
function highestOf(trial: Profile<'trial'>, column: string): number {
  const read = trialObservations(trial, methodOf(trial.data.method));
  return Math.max(...(read.ok ? (read.value.columns[column] ?? []) : []));
}

/** The part that a setting heats. */
const heatedBy: Readonly<Record<string, CheckedPart>> = {
  nozzleTemperature: 'nozzle',
  bedTemperature: 'bed',
  chamberTemperature: 'chamber',
  dryerTemperature: 'dryer',
};

/**
 * The temperatures that a thermometer showed at a part, where set temperatures were checked. A part that was not set to
 * what is claimed shows that much at least.
 */
export function temperaturesReached(
  trials: readonly Profile<'trial'>[],
  setting: string,
  claimed: number,
  context: EvidenceContext,
): ClaimEvidence[] {
  return trials
    .filter(({ data }) => data.checkedPart !== undefined && data.checkedPart === heatedBy[setting])
    .flatMap((trial) => {
      const evidence = evidenceFrom(trial, 'reachedTemperature', context);
      if (evidence === null) return [];
      const isAsked = highestOf(trial, 'setTemperature') >= claimed;
      return [isAsked ? evidence : { ...evidence, censored: 'above' as const }];
    });
}

/** What a trial was set to, as evidence that a machine reached it. */
export function settingOf(trial: Profile<'trial'>, value: number, context: EvidenceContext): ClaimEvidence {
  return { ...conditionsOfTrial(trial, context), value, interval: null, censored: null, how: 'set' };
}

function conditionsOfTrial(
  trial: Profile<'trial'>,
  context: EvidenceContext,
): Omit<ClaimEvidence, 'value' | 'interval' | 'censored' | 'how'> {
  const { date, nozzle, filament, conditions } = trial.data;
  const { isSimulated, faults } = trialStanding(trial, context);
  return {
    trial: trial.id,
    simulated: isSimulated,
    date,
    nozzle: nozzle ?? null,
    filament,
    nozzleTemperature: conditions.nozzleTemperature ?? null,
    faults,
  };
}

/** Measured statements beside a claim whose trial is not in the registry; the trials speak for the others. */
export function measuredBeside(
  machine: Profile<'machine'>,
  { beside }: Claim,
  context: EvidenceContext,
): ClaimEvidence[] {
  return beside
    .filter(({ basis, evidence }) => basis === 'measured' && !context.registry.trial.has(evidence ?? ''))
    .map((statement) => {
      const { value, interval, evidence, date, at } = statement;
      const placed = [...statementsOf(machine)].find((each) => each.statement === statement);
      return {
        value,
        interval: interval ?? null,
        censored: null,
        isAdopted: true,
        how: 'measured',
        simulated: false,
        trial: evidence ?? null,
        date: date ?? null,
        nozzle: at?.nozzle ?? null,
        filament: at?.filament ?? null,
        nozzleTemperature: at?.nozzleTemperature ?? null,
        faults: placed === undefined ? [] : standingOf(machine, placed, context).faults,
      };
    });
}

/** Where more is better: the evidence that speaks most for a claim first. */
export function highestFirst(evidence: readonly ClaimEvidence[]): ClaimEvidence[] {
  return evidence.toSorted((one, other) => other.value - one.value);
}
