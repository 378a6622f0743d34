import type { trialResults } from '../../bench/reduce-trial.ts';
import { reducingOnce } from '../../bench/reducing-once.ts';
import { features } from '../../knowledge/feature.ts';
import { type Origin, originOf } from '../../knowledge/origin.ts';
import {
  findPairing,
  type Pairing,
  type PairingProblem,
  type PairingRequest,
} from '../../knowledge/pairing.ts';
import { type Quirk, quirkConcerns, quirksOf } from '../../knowledge/quirks.ts';
import { pairingWarnings } from '../../knowledge/suitability/pairing-warnings.ts';
import { additionsTo } from '../../registry/addition.ts';
import { compareText } from '../../registry/finding.ts';
import type { Registry } from '../../registry/registry.ts';
import { failure, type Problem, type Result, refusal, success } from '../../result.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { type AskedBeads, beadsOf } from './beads.ts';
import { sourcedValuesIn } from './calculation.ts';
import type { BareCondition } from './conditions/condition-row.ts';
import { conditionRows } from './conditions/conditions.ts';
import { evidenceFaults, faultWarnings, type SourcedValueFault } from './evidence-standing.ts';
import { conditionFlags, flagsOf, flagWarnings } from './flag-rows.ts';
import { capsOf } from './house-caps.ts';
import { largestFlowOf } from './largest-flow.ts';
import { type LimitsProblem, type PairingLimits, pairingLimits } from './limits/pairing-limits.ts';
import { policyProblem, type UnusablePolicy } from './limits/usable-policy.ts';
import type { RowFlag } from './row-flag.ts';
import type { SourcedValue } from './sourced-value.ts';
import { type BareRow, speedRow } from './speed-row.ts';
import type { SpeedRow, SpeedTable } from './speed-table.ts';
import { tableInputs } from './table-inputs.ts';

/** How the evidence of the limits is judged. */
export interface JudgingOptions {
  readonly judgesEvidence?: true;
  /** Today's date, YYYY-MM-DD: what profiles acknowledge, they acknowledge until a date. */
  readonly today: string;
  /** Reduces a trial; a caller that derives many tables passes a function that remembers results. */
  readonly reduce?: typeof trialResults;
}

/** What a table is asked for: a pairing, and settings in place of those of its policy. */
export interface TableRequest extends PairingRequest, AskedBeads {
  /** The nozzle temperature in °C; by default the policy chooses it. */
  readonly temperature?: DegreesCelsius;
}

/** How tables are derived; without judging no trial is reduced, and no row is flagged for its evidence. */
export type DeriveOptions = JudgingOptions | { readonly judgesEvidence: false };

/** Why a pairing has no table. */
export type TableProblem = PairingProblem | UnusablePolicy | LimitsProblem | Problem<'noSpeed' | 'noBead'>;

/**
 * Speeds and flows at one nozzle temperature for every feature, layer height and line width of a pairing: each the least
 * of its bounds times the fraction of the policy, at most its cap, rounded to the safe side. All numbers in canonical units. The evidence of
 * the limits is judged as `check` does; what it does not support is flagged in its rows and named in a warning, and so
 * is what a profile acknowledges. Problems: an unknown id, a filament that does not fit, a policy that cannot be used or
 * refuses a limit, a pairing with no known melt limit, or a temperature outside of what was tested.
 */
export function deriveTables(
  registry: Registry,
  request: TableRequest,
  options: DeriveOptions,
): Result<SpeedTable, TableProblem> {
  const found = findPairing(registry, request);
  if (!found.ok) return found;
  const pairing = found.value;
  const unusable = policyProblem(pairing.policy.id, pairing.policy.data);
  if (unusable !== null) return failure(unusable);
  const limits = pairingLimits(registry, pairing, request.temperature);
  if (!limits.ok) return limits;
  const beads = beadsOf(pairing, request);
  if (beads.feasible.length === 0) return noBead(beads.warnings);
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
  const quirks = quirksOf(registry, pairing);
  const origin = tableOrigin(registry, pairing, sourcedValues);
  const rows = bare.map((row) => withNotes(row, quirks, flagsOf(origin, row, limits.value, faults)));
  const conditions = bareConditions.map((condition) => ({
    ...condition,
    flags: conditionFlags(origin, condition, limits.value, faults),
  }));
  return success({
    machine: pairing.machine.id,
    nozzle: pairing.nozzle.id,
    nozzleDiameter: pairing.nozzle.diameter,
    filament: pairing.filament.id,
    policy: pairing.policy.id,
    temperatures: {
      print: limits.value.print.nozzleTemperature,
      firstLayer: limits.value.firstLayer.melt.nozzleTemperature,
    },
    largestFlow: largestFlowOf(registry, pairing, limits.value),
    caps: capsOf(pairing, rows),
    rows,
    conditions,
    meltLimits: limits.value.melt,
    sourcedValues,
    inputs: tableInputs(registry, pairing, sourcedValues),
    quirks,
    origin,
    warnings: [
      ...pairingWarnings(registry, pairing).map(({ text }) => text),
      ...beads.warnings,
      ...limits.value.warnings,
      ...faultWarnings(faults),
      ...flagWarnings(rows),
    ],
  });
}

/** A row with the quirks that show at its flow and temperature. */
function withNotes(row: BareRow, quirks: readonly Quirk[], flags: readonly RowFlag[]): SpeedRow {
  const here = quirks.flatMap((quirk, index) => (quirkConcerns(quirk, row) ? [index] : []));
  return { ...row, quirks: here, flags: here.length > 0 ? [...flags, 'quirk'] : flags };
}

/** What of a table is not real: of its profiles, and of the trials behind its numbers. */
function tableOrigin(
  registry: Registry,
  { machine, filament, policy }: Pairing,
  sourcedValues: readonly SourcedValue[],
): Origin {
  return originOf(registry, {
    profiles: [machine, filament, policy, ...additionsTo(filament.id, registry.addition)],
    trials: sourcedValues.flatMap(({ evidence }) => evidence ?? []),
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

function noBead(warnings: readonly string[]) {
  return refusal(
    'noBead',
    `No line can be laid. ${warnings.join(' ')}`,
    'Take lower layers, or wider lines.',
  );
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
