import { beadArea, flowAtSpeed, isBeadFeasible } from '../physics/bead.ts';
import { runUpLength } from '../physics/motion.ts';
import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { chooseStatement } from '../registry/statement.ts';
import { failure, type Result, success } from '../result.ts';
import { boundsOf, type Grounded } from './bounds.ts';
import { type Feature, features, isPrinted } from './feature.ts';
import { type MeltLimit, meltLimits } from './melt-limit.ts';
import { conditionsOf, findPairing, type Pairing, type PairingRequest } from './pairing.ts';
import { clean, roundDown, roundUp } from './rounding.ts';
import type { Bound, SpeedRow, SpeedTable, TableInput } from './speed-table.ts';
import { policyFault } from './usable-policy.ts';

/**
 * Speeds, flows and temperatures for every feature, layer height and line width of a pairing: each the least of its
 * bounds times the fraction of the policy, rounded to the safe side. All numbers in canonical units. The error is a
 * sentence for the user: an unknown id, a strand that does not fit, or a pairing with no known melt limit.
 */
export function deriveTables(registry: Registry, request: PairingRequest): Result<SpeedTable, string> {
  const found = findPairing(registry, request);
  if (!found.ok) return found;
  const pairing = found.value;
  const fault = policyFault(pairing.policy.id, pairing.policy.data);
  if (fault !== null) return failure(fault);
  const limits = meltLimits(pairing);
  const strongest = largest(limits);
  if (strongest === null) return failure(noLimit(pairing));
  const acceleration = chooseStatement(pairing.machine.data.acceleration, conditionsOf(pairing));
  if (acceleration === null)
    return failure(`No acceleration of ${pairing.machine.id} is known for this pairing.`);
  const beads = beadsOf(pairing);
  const rows = features.flatMap((feature) =>
    beads.feasible.flatMap((bead) => rowOf(pairing, feature, bead, limits, strongest, acceleration)),
  );
  if (rows.some(({ speed, runUp }) => !(speed > 0 && Number.isFinite(runUp)))) {
    return failure(nothingLeft(pairing));
  }
  return success({
    machine: pairing.machine.id,
    nozzle: pairing.nozzle.id,
    nozzleDiameter: pairing.nozzle.diameter,
    filament: pairing.filament.id,
    policy: pairing.policy.id,
    rows,
    inputs: inputsOf(registry, pairing, limits),
    warnings: beads.warnings,
  });
}

function noLimit({ machine, nozzle, filament }: Pairing): string {
  return `No melt flow is known for ${filament.id} on ${machine.id} with nozzle ${nozzle.id}: run a flow ladder, reduce it and adopt its limit.`;
}

function nothingLeft({ machine, filament }: Pairing): string {
  return `No speed above 0 follows for ${filament.id} on ${machine.id}: look for a speed, acceleration or flow that is 0 or negative in their profiles.`;
}

function largest(limits: readonly MeltLimit[]): MeltLimit | null {
  return limits.reduce<MeltLimit | null>(
    (best, limit) => (best === null || limit.flow > best.flow ? limit : best),
    null,
  );
}

interface Bead {
  readonly layerHeight: number;
  readonly lineWidth: number;
}

function beadsOf({ policy, nozzle }: Pairing): { feasible: Bead[]; warnings: string[] } {
  const beads = policy.data.layerHeights.flatMap((height) =>
    policy.data.lineWidths.map((width) => ({
      layerHeight: clean(height * nozzle.diameter),
      lineWidth: clean(width * nozzle.diameter),
    })),
  );
  const feasible = beads.filter((bead) => isBeadFeasible(bead.layerHeight, bead.lineWidth));
  const warnings = beads
    .filter((bead) => !feasible.includes(bead))
    .map((bead) => `A line ${bead.lineWidth} mm wide cannot be ${bead.layerHeight} mm high; it is left out.`);
  return { feasible, warnings };
}

function rowOf(
  pairing: Pairing,
  feature: Feature,
  bead: Bead,
  limits: readonly MeltLimit[],
  strongest: MeltLimit,
  stated: Grounded,
): SpeedRow[] {
  const { rounding, fractions, accelerationFractions, flowMargin } = pairing.policy.data;
  const acceleration = roundDown(stated.value * accelerationFractions[feature], rounding.acceleration);
  const area = beadArea(bead.layerHeight, bead.lineWidth);
  const bounds = boundsOf(pairing, feature, area, strongest, { value: acceleration, basis: stated.basis });
  const binding = least(bounds);
  if (binding === null) return [];
  const speed = roundDown(binding.speed * fractions[feature], rounding.speed);
  const flow = isPrinted(feature) ? flowAtSpeed(speed, area) : 0;
  const enough = limits.find((limit) => limit.flow * (1 - flowMargin) >= flow) ?? strongest;
  return [
    {
      feature,
      ...bead,
      speed,
      flow: roundDown(flow, rounding.flow),
      acceleration,
      bound: binding.name,
      nozzleTemperature: enough.nozzleTemperature,
      runUp: roundUp(runUpLength(speed, acceleration), rounding.runUp),
      basis: binding.basis,
    },
  ];
}

function least(bounds: readonly Bound[]): Bound | null {
  return bounds.reduce<Bound | null>(
    (lowest, bound) => (lowest === null || bound.speed < lowest.speed ? bound : lowest),
    null,
  );
}

function inputsOf(registry: Registry, pairing: Pairing, limits: readonly MeltLimit[]): TableInput[] {
  const trials = limits.flatMap(({ evidence }) => {
    const trial = evidence === null ? undefined : registry.trial.get(evidence);
    return trial === undefined ? [] : [input(trial, null)];
  });
  const { machine, filament, policy } = pairing;
  return [
    input(machine, machine.data.version),
    input(filament, filament.data.version),
    input(policy, policy.data.version),
    ...trials,
  ];
}

function input(
  { kind, id, source }: Profile<'machine' | 'filament' | 'policy' | 'trial'>,
  version: string | null,
): TableInput {
  return { kind, id, version, digest: source.digest };
}
