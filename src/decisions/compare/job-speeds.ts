import type { JobFeature, JobPaths, PathSettings } from '../../bench/reference-print/job-plan.ts';
import { features } from '../../knowledge/feature.ts';
import { beadArea, speedAtFlow } from '../../physics/bead.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { contourFor } from '../../tables/derive/limits/contour-limit.ts';
import type { BoundName } from '../../tables/derive/speed-table.ts';
import type { Fraction, MillimetresPerSecond } from '../../units/canonical.ts';
import { roundDown } from '../../units/round-to-step.ts';
import type { BoundFacts, PairingFigures, PathFigures } from './pairing-figures.ts';
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
export type SpeedsProblem = Problem<'noSpeed'>;

/** The share of a melt flow limit that is used. */
export type MeltShare = (limit: FlowBound) => Fraction;

type FlowBound = Extract<PathFigures['bounds'][number], { readonly of: 'flow' }>;

/**
 * Commanded speeds for the paths of a job: the least of what bounds the pairing at the beads of the job, with a share of its
 * melt flow limit.
 */
export function jobSpeeds(
  figures: PairingFigures,
  job: JobPaths,
  meltShare: MeltShare = () => 1,
): Result<ReadonlyMap<JobFeature, JobSpeed>, SpeedsProblem> {
  const speeds = new Map<JobFeature, JobSpeed>();
  for (const feature of features) {
    if (job.features[feature] === undefined) continue;
    const speed = speedOf(figures, feature, job, meltShare);
    if (!speed.ok) return speed;
    speeds.set(feature, speed.value);
  }
  return success(speeds);
}

function speedOf(
  { machine, filament, paths, speedStep }: PairingFigures,
  feature: JobFeature,
  job: JobPaths,
  meltShare: MeltShare,
): Result<JobSpeed, SpeedsProblem> {
  const { acceleration, accelerationBasis } = paths[feature];
  const least = leastOf(allowedSpeeds(paths[feature], beadOf(job, feature), meltShare));
  const speed = least === null ? 0 : roundDown(least.speed, speedStep);
  if (least === null || !(speed > 0 && acceleration > 0)) {
    return refusal(
      'noSpeed',
      `No speed above 0 follows for ${feature} with ${filament} on ${machine}`,
      'Look for a speed, acceleration or flow that is 0 or negative in their profiles.',
    );
  }
  const { name, basis, isSimulated, trials } = least.bound;
  const named = basis === null ? [] : [{ basis, of: `${name} bound of ${feature}`, isSimulated }];
  return success({
    ...{ speed, acceleration, bound: name, trials },
    weakest: weakestOf(accelerationBasis, named),
  });
}

interface AllowedSpeed {
  readonly bound: BoundFacts;
  readonly speed: MillimetresPerSecond;
}

/** What each bound allows, those first that count where several are equal: house rules come last. */
function allowedSpeeds(
  { acceleration, bounds, contour }: PathFigures,
  { layerHeight, area }: ReturnType<typeof beadOf>,
  meltShare: MeltShare,
): AllowedSpeed[] {
  const chosen = contourFor(contour, layerHeight, acceleration)?.limit;
  const allowed = bounds.map((bound): AllowedSpeed => {
    if (bound.of === 'speed') return { bound, speed: bound.most };
    const share = bound.name === 'melt' ? meltShare(bound) : 1;
    return { bound, speed: speedAtFlow(bound.most * share, area) };
  });
  const isRule = ({ bound }: AllowedSpeed) => bound.name === 'policy' || bound.name === 'quality';
  return [
    ...allowed.filter((each) => !isRule(each)),
    ...(chosen === undefined ? [] : [{ bound: chosen, speed: chosen.most }]),
    ...allowed.filter(isRule),
  ];
}

/** The bead of a feature; on travel moves there is none. */
function beadOf({ features: asked }: JobPaths, feature: JobFeature) {
  const path = asked[feature];
  return path !== undefined && 'layerHeight' in path
    ? { layerHeight: path.layerHeight, area: beadArea(path.layerHeight, path.lineWidth) }
    : { layerHeight: 0, area: 0 };
}

function leastOf(allowed: readonly AllowedSpeed[]): AllowedSpeed | null {
  return allowed.reduce<AllowedSpeed | null>(
    (lowest, each) => (lowest === null || each.speed < lowest.speed ? each : lowest),
    null,
  );
}
