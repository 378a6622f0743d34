import { usualAcceptedDeficit } from '../../../bench/flow-ladder/flow-ladder-settings.ts';
import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import type { Statement } from '../../../registry/generated/documents.ts';
import type { AnyProfile } from '../../../registry/profile.ts';
import type { Registry } from '../../../registry/registry.ts';
import {
  type Basis,
  besideOf,
  type Conditions,
  safestOf,
  statementsByWeight,
  weakerBasis,
} from '../../../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../../../result.ts';
import { middle } from '../../../statistics/middle.ts';
import type { DegreesCelsius, Fraction } from '../../../units/canonical.ts';
import { formatQuantity } from '../../../units/format-quantity.ts';
import { hottestSetting, nozzleWindow } from './nozzle-settings.ts';
import { type UsableLimit, usableLimit, type WeakLimit } from './usable-limit.ts';

/** The most melt that a pairing delivers at a nozzle temperature; `value` in mm3/s. */
export interface MeltLimit extends UsableLimit {
  readonly nozzleTemperature: DegreesCelsius;
  /** Share of the flow that was missing at the limit, as its trial accepted; null where it rests on none. */
  readonly acceptedDeficit: Fraction | null;
  /** What the statement of the limit adds, such as that it is a lower bound; null where nothing. */
  readonly note: string | null;
  /** How many limits were measured under these conditions, of which this is the lowest. */
  readonly amongMeasured: number;
}

/** Melt limits, from the coolest nozzle temperature to the hottest, and what was left out. */
interface MeltLimits {
  readonly limits: readonly MeltLimit[];
  readonly warnings: readonly string[];
}

/** Why a pairing has no melt limit: none is stated, or none that is may be used. */
export type NoMeltLimit = Problem<'noMeltFlow' | 'noUsableMeltFlow'>;

/**
 * Melt limits of a pairing, which all rest on the same, strongest basis that there is; of several that were measured
 * under the same conditions (batches, repeated ladders) the lowest. Left out are limits at temperatures that the hot end
 * or the filament must not see, and those whose trial accepted a larger deficit than the policy does; one that accepted a
 * smaller deficit is on the safe side.
 */
export function meltLimits(
  registry: Registry,
  pairing: Pairing,
): Result<MeltLimits, WeakLimit | NoMeltLimit> {
  const { filament, machine, hotEnd, policy } = pairing;
  const byWeight = statementsByWeight(
    [...(filament.data.meltFlow ?? []), ...(hotEnd.meltFlow ?? [])],
    (statement) => withoutTemperature(statement.at ?? {}),
    conditionsOf(pairing),
  );
  const strongest = byWeight[0]?.basis;
  const limits = new Map<number, MeltLimit>();
  const leftOut = new Map<number, string>();
  for (const [temperature, stated] of byTemperature(byWeight, strongest, pairing)) {
    const faults = stated.map((statement) => faultOf(registry, pairing, statement, temperature));
    const usable = stated.filter((_, index) => faults[index] === null);
    const statement = safestOf(usable, conditionsOf(pairing), 'below');
    if (statement === null) {
      leftOut.set(temperature, leftOutText(stated, faults, temperature));
      continue;
    }
    const profile: AnyProfile = filament.data.meltFlow?.includes(statement) ? filament : machine;
    const limit = usableLimit(policy, 'meltFlow', profile, statement);
    if (!limit.ok) return limit;
    const beside = besideOf(statement, usable, conditionsOf(pairing)).length;
    limits.set(temperature, meltLimit(registry, pairing, statement, temperature, limit.value, beside));
  }
  const sorted = [...limits.values()].sort((a, b) => a.nozzleTemperature - b.nozzleTemperature);
  const warnings = [...leftOut].sort(([a], [b]) => a - b).map(([, sentence]) => sentence);
  return sorted.length > 0
    ? success({ limits: sorted, warnings: [...warnings, ...besideWarnings(sorted)] })
    : noLimit(pairing, warnings);
}

/** Statements on the strongest basis by nozzle temperature, at each the one that counts first. */
function byTemperature(
  byWeight: readonly Statement<number>[],
  strongest: Basis | undefined,
  pairing: Pairing,
): ReadonlyMap<DegreesCelsius, readonly Statement<number>[]> {
  const all = new Map<DegreesCelsius, Statement<number>[]>();
  for (const statement of byWeight.filter(({ basis }) => basis === strongest)) {
    const temperature = temperatureOf(statement, pairing);
    if (temperature !== null) all.set(temperature, [...(all.get(temperature) ?? []), statement]);
  }
  return all;
}

function leftOutText(
  [first]: readonly Statement<number>[],
  [fault]: readonly (string | null)[],
  temperature: DegreesCelsius,
): string {
  const limit = first === undefined ? degrees(temperature) : `${flow(first)} at ${degrees(temperature)}`;
  return `The limit of ${limit} is left out: ${fault}.`;
}

/** That a limit is the lowest of several, for each temperature where it is. */
function besideWarnings(limits: readonly MeltLimit[]): string[] {
  return limits
    .filter(({ amongMeasured }) => amongMeasured > 1)
    .map(
      ({ amongMeasured, value, nozzleTemperature, ground: { evidence } }) =>
        `${amongMeasured} limits were measured at ${degrees(nozzleTemperature)}: the lowest counts, ${formatQuantity(value, 'volumeFlow', { significantDigits: 6 })} of trial ${evidence}.`,
    );
}

function withoutTemperature({ nozzleTemperature: _, ...rest }: Conditions): Conditions {
  return rest;
}

/** A claim that names no temperature is read at the middle of the window of the filament. */
function temperatureOf({ at }: Statement<number>, pairing: Pairing): DegreesCelsius | null {
  const window = nozzleWindow(pairing)?.value;
  return at?.nozzleTemperature ?? (window === undefined ? null : middle(window));
}

function faultOf(
  registry: Registry,
  pairing: Pairing,
  statement: Statement<number>,
  temperature: DegreesCelsius,
): string | null {
  const { filament, policy } = pairing;
  const highest = hottestSetting(pairing);
  if (temperature > highest) return `the hot end may be set to ${degrees(highest)} at most`;
  const window = nozzleWindow(pairing)?.value;
  if (window !== undefined && (temperature < window.low || temperature > window.high)) {
    return `${filament.id} is to be printed at ${degrees(window.low)} to ${degrees(window.high)}`;
  }
  const deficit = deficitOf(registry, statement);
  return deficit !== null && deficit > policy.data.acceptedDeficit * (1 + 1e-9)
    ? `its trial ${statement.evidence} accepted a deficit of ${percent(deficit)}, more than the ${percent(policy.data.acceptedDeficit)} of the policy; reduce the ladder again with that`
    : null;
}

function deficitOf(registry: Registry, { basis, evidence }: Statement<number>): Fraction | null {
  const trial = basis !== 'measured' || evidence === undefined ? undefined : registry.trial.get(evidence);
  return trial === undefined ? null : (trial.data.acceptedDeficit ?? usualAcceptedDeficit);
}

function meltLimit(
  registry: Registry,
  pairing: Pairing,
  statement: Statement<number>,
  nozzleTemperature: DegreesCelsius,
  usable: UsableLimit,
  amongMeasured: number,
): MeltLimit {
  const window = statement.at?.nozzleTemperature === undefined ? nozzleWindow(pairing) : null;
  return {
    ...usable,
    nozzleTemperature,
    basis: window === null ? usable.basis : weakerBasis(usable.basis, window.basis),
    acceptedDeficit: deficitOf(registry, statement),
    note: statement.note ?? null,
    amongMeasured,
  };
}

function noLimit({ machine, nozzle, filament }: Pairing, leftOut: readonly string[]) {
  const pairing = `${filament.id} on ${machine.id} with nozzle ${nozzle.id}`;
  const help = 'Run a flow ladder, reduce it and adopt its limit.';
  return leftOut.length === 0
    ? refusal('noMeltFlow', `No melt flow is known for ${pairing}`, help)
    : refusal('noUsableMeltFlow', `No melt flow can be used for ${pairing}. ${leftOut.join(' ')}`, help);
}

function flow({ value }: Statement<number>): string {
  return formatQuantity(value, 'volumeFlow', { significantDigits: 6 });
}

function degrees(value: DegreesCelsius): string {
  return formatQuantity(value, 'temperature', { significantDigits: 6 });
}

function percent(value: Fraction): string {
  return formatQuantity(value, 'ratio', { unit: '%', significantDigits: 4 });
}
