import type { JobFeature, PathSettings } from '../../bench/reference-print/job-plan.ts';
import { features } from '../../knowledge/feature.ts';
import { originOf } from '../../knowledge/origin.ts';
import type { Pairing } from '../../knowledge/pairing.ts';
import { beadArea } from '../../physics/bead.ts';
import type { Job } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Basis } from '../../registry/statement.ts';
import { failure, type Problem, type Result, refusal, success } from '../../result.ts';
import { boundsOf } from '../../tables/derive/bounds.ts';
import { resultTerm, sourcedValuesIn, type Term } from '../../tables/derive/calculation.ts';
import {
  type LimitsProblem,
  meltOf,
  type PairingLimits,
  pairingLimits,
} from '../../tables/derive/limits/pairing-limits.ts';
import { policyProblem, type UnusablePolicy } from '../../tables/derive/limits/usable-policy.ts';
import type { SourcedValue } from '../../tables/derive/sourced-value.ts';
import { accelerationOf } from '../../tables/derive/speed-row.ts';
import type { Bound, BoundName } from '../../tables/derive/speed-table.ts';
import { roundDown } from '../../units/round-to-step.ts';
import { type NamedBasis, weakestOf } from './weakest-number.ts';

/** How a kind of path of a job is set on a pairing, and what limits the speed there. */
export interface JobSpeed extends PathSettings {
  /** The bound that holds the commanded speed; what the motion on the job's own segments makes of it is the time model's. */
  readonly bound: BoundName;
  /** The weaker of speed and acceleration. */
  readonly weakest: NamedBasis;
  /** Trials that show the bound. */
  readonly trials: readonly string[];
}

/** Why a path of a job has no speed. */
export type SpeedsProblem = UnusablePolicy | LimitsProblem | Problem<'noSpeed'>;

/**
 * Commanded speeds for the paths of a job, by the policy of the pairing: its fraction of the least of melt, machine and
 * quality at the beads of the job, at most its cap, all at the one nozzle temperature that the policy chooses. Motion and cooling are left to the time model, which knows the segments and
 * layers of the job, where a table has to assume typical ones.
 */
export function jobSpeeds(
  registry: Registry,
  pairing: Pairing,
  job: Job,
): Result<ReadonlyMap<JobFeature, JobSpeed>, SpeedsProblem> {
  const unusable = policyProblem(pairing.policy.id, pairing.policy.data);
  if (unusable !== null) return failure(unusable);
  const limits = pairingLimits(registry, pairing);
  if (!limits.ok) return limits;
  const speeds = new Map<JobFeature, JobSpeed>();
  for (const feature of features) {
    if (job.features[feature] === undefined) continue;
    const speed = speedOf(registry, pairing, limits.value, feature, job);
    if (!speed.ok) return speed;
    speeds.set(feature, speed.value);
  }
  return success(speeds);
}

function speedOf(
  registry: Registry,
  pairing: Pairing,
  limits: PairingLimits,
  feature: JobFeature,
  job: Job,
): Result<JobSpeed, Problem<'noSpeed'>> {
  const { machine, filament, policy } = pairing;
  const { rounding } = policy.data;
  const acceleration = resultTerm(accelerationOf(pairing, limits, feature));
  const path = job.features[feature];
  const layerHeight = path !== undefined && 'layerHeight' in path ? path.layerHeight : 0;
  const bounds = boundsOf(pairing, limits, {
    feature,
    layerHeight,
    area: areaOf(feature, job),
    acceleration,
  });
  const least = leastOf(bounds.filter(({ name }) => name !== 'motion' && name !== 'cooling'));
  const speed = least === null ? 0 : roundDown(least.allowed, rounding.speed);
  if (least === null || !(speed > 0 && acceleration.value > 0)) {
    return refusal(
      'noSpeed',
      `No speed above 0 follows for ${feature} with ${filament.id} on ${machine.id}`,
      'Look for a speed, acceleration or flow that is 0 or negative in their profiles.',
    );
  }
  const trials = trialsOf(least, limits, feature);
  return success({
    speed,
    acceleration: acceleration.value,
    bound: least.name,
    weakest: weakestOf(
      named(registry, limits.acceleration.basis, 'acceleration', trialsIn([limits.acceleration.ground])),
      least.basis === null ? [] : [named(registry, least.basis, `${least.name} bound of ${feature}`, trials)],
    ),
    trials,
  });
}

function named(registry: Registry, basis: Basis, of: string, trials: readonly string[]): NamedBasis {
  return { basis, of, isSimulated: originOf(registry, { trials }).simulated.length > 0 };
}

/** The trials that show a bound; that of the melt may be read off a line through the limits of several. */
function trialsOf(bound: Bound, limits: PairingLimits, feature: JobFeature): string[] {
  const behind = bound.name === 'melt' ? meltOf(limits, feature).limits.map(({ ground }) => ground) : [];
  return trialsIn([...sourcedValuesIn(bound), ...behind]);
}

function trialsIn(sourcedValues: readonly SourcedValue[]): string[] {
  return [...new Set(sourcedValues.flatMap(({ evidence }) => evidence ?? []))];
}

function areaOf(feature: JobFeature, { features: asked }: Job): Term {
  const path = asked[feature];
  const value = path !== undefined && 'layerHeight' in path ? beadArea(path.layerHeight, path.lineWidth) : 0;
  return {
    symbol: 'A',
    what: `cross-section of the bead of ${feature}`,
    value,
    dimension: 'area',
    ground: null,
  };
}

function leastOf(bounds: readonly Bound[]): Bound | null {
  return bounds.reduce<Bound | null>(
    (lowest, bound) => (lowest === null || bound.allowed < lowest.allowed ? bound : lowest),
    null,
  );
}
