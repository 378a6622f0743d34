import type { JobFeature, PathSettings } from '../bench/job-plan.ts';
import { beadArea } from '../physics/bead.ts';
import type { Job } from '../registry/generated/documents.ts';
import { chooseStatement } from '../registry/statement.ts';
import { failure, type Result, success } from '../result.ts';
import { boundsOf } from '../tables/bounds.ts';
import { features } from '../tables/feature.ts';
import { meltLimits } from '../tables/melt-limit.ts';
import { conditionsOf, type Pairing } from '../tables/pairing.ts';
import { roundDown } from '../tables/rounding.ts';
import type { Bound, BoundName } from '../tables/speed-table.ts';
import { policyFault } from '../tables/usable-policy.ts';
import { type NamedBasis, weakestOf } from './weakest-number.ts';

/** How a kind of path of a job is set on a pairing, and what holds the speed there. */
export interface JobSpeed extends PathSettings {
  /** The bound that holds the commanded speed; what the motion on the job's own segments makes of it is the time model's. */
  readonly bound: BoundName;
  /** The weaker of speed and acceleration. */
  readonly weakest: NamedBasis;
}

/**
 * Commanded speeds for the paths of a job, by the policy of the pairing: its fraction of the least of melt, machine and
 * quality at the beads of the job. Motion and cooling are left to the time model, which knows the segments and
 * layers of the job, where a table has to assume typical ones. The error is a sentence for the user.
 */
export function jobSpeeds(pairing: Pairing, job: Job): Result<ReadonlyMap<JobFeature, JobSpeed>, string> {
  const fault = policyFault(pairing.policy.id, pairing.policy.data);
  if (fault !== null) return failure(fault);
  const speeds = new Map<JobFeature, JobSpeed>();
  for (const feature of features) {
    if (job.features[feature] === undefined) continue;
    const speed = speedOf(pairing, feature, job);
    if (!speed.ok) return speed;
    speeds.set(feature, speed.value);
  }
  return success(speeds);
}

function speedOf(pairing: Pairing, feature: JobFeature, job: Job): Result<JobSpeed, string> {
  const { machine, filament, nozzle, policy } = pairing;
  const stated = chooseStatement(machine.data.acceleration, conditionsOf(pairing));
  if (stated === null) return failure(`No acceleration of ${machine.id} is known for this pairing.`);
  const melt = meltLimits(pairing).reduce<ReturnType<typeof meltLimits>[number] | null>(
    (best, limit) => (best === null || limit.flow > best.flow ? limit : best),
    null,
  );
  if (melt === null) {
    return failure(
      `No melt flow is known for ${filament.id} on ${machine.id} with nozzle ${nozzle.id}: run a flow ladder, reduce it and adopt its limit.`,
    );
  }
  const { rounding, fractions, accelerationFractions } = policy.data;
  const acceleration = roundDown(stated.value * accelerationFractions[feature], rounding.acceleration);
  const bounds = boundsOf(pairing, feature, areaOf(feature, job), melt, { ...stated, value: acceleration });
  const least = leastOf(bounds.filter(({ name }) => name !== 'motion' && name !== 'cooling'));
  const speed = least === null ? 0 : roundDown(least.speed * fractions[feature], rounding.speed);
  if (least === null || !(speed > 0 && acceleration > 0)) {
    return failure(
      `No speed above 0 follows for ${feature} with ${filament.id} on ${machine.id}: look for a speed, acceleration or flow that is 0 or negative in their profiles.`,
    );
  }
  return success({
    speed,
    acceleration,
    bound: least.name,
    weakest: weakestOf({ basis: least.basis, of: `${least.name} bound of ${feature}` }, [
      { basis: stated.basis, of: 'acceleration' },
    ]),
  });
}

function areaOf(feature: JobFeature, { features: asked }: Job): number {
  const path = asked[feature];
  return path !== undefined && 'layerHeight' in path ? beadArea(path.layerHeight, path.lineWidth) : 0;
}

function leastOf(bounds: readonly Bound[]): Bound | null {
  return bounds.reduce<Bound | null>(
    (lowest, bound) => (lowest === null || bound.speed < lowest.speed ? bound : lowest),
    null,
  );
}
