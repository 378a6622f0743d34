import type { trialResults } from '../../bench/reduce-trial.ts';
import { reducingOnce } from '../../bench/reducing-once.ts';
import { features } from '../../knowledge/feature.ts';
import {
  findPairing,
  type Pairing,
  type PairingProblem,
  type PairingRequest,
} from '../../knowledge/pairing.ts';
import { compareText } from '../../registry/finding.ts';
import type { Registry } from '../../registry/registry.ts';
import { failure, type Problem, type Result, refusal, success } from '../../result.ts';
import { beadsOf } from './beads.ts';
import { sourcedValuesIn } from './calculation.ts';
import type { BareCondition } from './condition-row.ts';
import { conditionRows } from './conditions.ts';
import { evidenceFaults, faultWarnings, type SourcedValueFault } from './evidence-standing.ts';
import { conditionFlags, flagsOf, flagWarnings } from './flag-rows.ts';
import { type LimitsProblem, type PairingLimits, pairingLimits } from './pairing-limits.ts';
import type { SourcedValue } from './sourced-value.ts';
import { type BareRow, speedRow } from './speed-row.ts';
import type { SpeedRow, SpeedTable } from './speed-table.ts';
import { tableInputs } from './table-inputs.ts';
import { policyProblem, type UnusablePolicy } from './usable-policy.ts';

/** How the evidence of the limits is judged. */
export interface JudgingOptions {
  readonly judgesEvidence?: true;
  /** Today's date, YYYY-MM-DD: what profiles acknowledge, they acknowledge until a date. */
  readonly today: string;
  /** Reduces a trial; a caller that derives many tables passes a function that remembers results. */
  readonly reduce?: typeof trialResults;
}

/** How tables are derived; without judging no trial is reduced, and no row is flagged for its evidence. */
export type DeriveOptions = JudgingOptions | { readonly judgesEvidence: false };

/** Why a pairing has no table. */
export type TableProblem = PairingProblem | UnusablePolicy | LimitsProblem | Problem<'noSpeed'>;

/**
 * Speeds, flows and temperatures for every feature, layer height and line width of a pairing: each the least of its
 * bounds times the fraction of the policy, rounded to the safe side. All numbers in canonical units. The evidence of
 * the limits is judged as `check` does; what it does not support is flagged in its rows and named in a warning, and so
 * is what a profile acknowledges. Problems: an unknown id, a filament that does not fit, a policy that cannot be used or
 * refuses a limit, or a pairing with no known melt limit.
 */
export function deriveTables(
  registry: Registry,
  request: PairingRequest,
  options: DeriveOptions,
): Result<SpeedTable, TableProblem> {
  const found = findPairing(registry, request);
  if (!found.ok) return found;
  const pairing = found.value;
  const unusable = policyProblem(pairing.policy.id, pairing.policy.data);
  if (unusable !== null) return failure(unusable);
  const limits = pairingLimits(registry, pairing);
  if (!limits.ok) return limits;
  const beads = beadsOf(pairing);
  const bare = features.flatMap((feature) =>
    beads.feasible.flatMap((bead) => speedRow(pairing, limits.value, feature, bead) ?? []),
  );
  if (bare.some(({ speed, runUp }) => !(speed > 0 && Number.isFinite(runUp)))) {
    return nothingLeft(pairing);
  }
  const largestFlow = Math.max(0, ...bare.map(({ flow }) => flow));
  const bareConditions = conditionRows(registry, pairing, limits.value, largestFlow);
  const sourcedValues = sourcedValuesOf(bare, bareConditions, limits.value);
  const faults = judgedFaults(registry, sourcedValues, options);
  const rows = bare.map((row): SpeedRow => ({ ...row, flags: flagsOf(row, limits.value, faults) }));
  const conditions = bareConditions.map((condition) => ({
    ...condition,
    flags: conditionFlags(condition, limits.value, faults),
  }));
  return success({
    machine: pairing.machine.id,
    nozzle: pairing.nozzle.id,
    nozzleDiameter: pairing.nozzle.diameter,
    filament: pairing.filament.id,
    policy: pairing.policy.id,
    rows,
    conditions,
    meltLimits: limits.value.melt,
    sourcedValues,
    inputs: tableInputs(registry, pairing, sourcedValues),
    warnings: [...beads.warnings, ...limits.value.warnings, ...faultWarnings(faults), ...flagWarnings(rows)],
  });
}

function judgedFaults(
  registry: Registry,
  sourcedValues: readonly SourcedValue[],
  options: DeriveOptions,
): SourcedValueFault[] {
  if (options.judgesEvidence === false) return [];
  const { today, reduce } = options;
  return evidenceFaults(sourcedValues, { registry, today, reduce: reducingOnce(registry, reduce) });
}

function nothingLeft({ machine, filament }: Pairing) {
  return refusal(
    'noSpeed',
    `No speed above 0 follows for ${filament.id} on ${machine.id}`,
    'Look for a speed, acceleration or flow that is 0 or negative in their profiles.',
  );
}

/** Every ground that some row or condition rests on, and those of all melt limits, each once. */
function sourcedValuesOf(
  rows: readonly BareRow[],
  conditions: readonly BareCondition[],
  { melt }: PairingLimits,
): SourcedValue[] {
  const all = new Map(melt.map(({ ground }) => [ground.key, ground]));
  const ofRows = rows.flatMap(({ sizes, bounds, results }) =>
    [...sizes, ...bounds, ...results].flatMap(sourcedValuesIn),
  );
  for (const ground of [...ofRows, ...conditions.flatMap(({ sourcedValues }) => sourcedValues)]) {
    if (!all.has(ground.key)) all.set(ground.key, ground);
  }
  return [...all.values()].sort((a, b) => compareText(a.key, b.key));
}
