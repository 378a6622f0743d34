import type { JobPaths } from '../../bench/reference-print/job-plan.ts';
import { type Feature, features } from '../../knowledge/feature.ts';
import { isBeadFeasible } from '../../physics/bead.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import type { Millimetres } from '../../units/canonical.ts';
import { clean } from '../../units/round-to-step.ts';

/** Paths that are laid once, however many layers there are: a closing surface, a bridge over a gap. */
const laidOnce: readonly Feature[] = ['topSurface', 'bridge'];

/** Why a job cannot be printed in layers of another height. */
export type LayerHeightProblem = Problem<'noLayerHeight' | 'layerTooHigh'>;

/** Height of the layers above the first, in mm: the least that a job asks for; null where it has none above. */
export function layerHeightOf({ features: asked }: JobPaths): Millimetres | null {
  const heights = features.flatMap((feature) => {
    const path = asked[feature];
    return feature !== 'firstLayer' && path !== undefined && 'layerHeight' in path ? [path.layerHeight] : [];
  });
  return heights.length === 0 ? null : Math.min(...heights);
}

/**
 * The same part in layers of another height, in mm: as many more layers above the first as they are lower, each with the paths
 * that a layer had. The first layer stays as it is, and a closing surface and a bridge keep their length. Source: common practice,
 * no source; the part keeps its height and its volume nearly.
 */
export function jobAtLayerHeight(job: JobPaths, height: Millimetres): Result<JobPaths, LayerHeightProblem> {
  const usual = layerHeightOf(job);
  if (usual === null || !(usual > 0 && height > 0)) {
    return refusal('noLayerHeight', 'The job has no layers above its first', 'Leave the layer height out.');
  }
  const factor = height / usual;
  if (Math.abs(factor - 1) < 1e-9) return success(job);
  const first = job.features.firstLayer === undefined ? 0 : 1;
  const above = job.layers - first;
  // A job of one layer has nothing above it: what it says of other layers lies in the one.
  const layers = above > 0 ? first + Math.max(1, Math.round(above / factor)) : job.layers;
  const inEach = above > 0 ? (layers - first) / above : 1;
  const layered = layeredPaths(job.features, factor, inEach);
  if (!layered.ok) return layered;
  const { travel } = job.features;
  const moved = travel && { ...travel, pathLength: travel.pathLength * (layers / job.layers) };
  return success({ ...job, layers, features: { ...layered.value, ...(moved && { travel: moved }) } });
}

/** Printed paths above the first layer at another height, as many times as long as there are more layers. */
function layeredPaths(
  asked: JobPaths['features'],
  factor: number,
  inEach: number,
): Result<JobPaths['features'], LayerHeightProblem> {
  const changed = { ...asked };
  for (const feature of features) {
    if (feature === 'firstLayer' || feature === 'travel') continue;
    const path = asked[feature];
    if (path === undefined) continue;
    const layerHeight = clean(path.layerHeight * factor);
    if (!isBeadFeasible(layerHeight, path.lineWidth)) return tooHigh(layerHeight, path.lineWidth);
    const pathLength = path.pathLength * (laidOnce.includes(feature) ? 1 : inEach);
    changed[feature] = { ...path, layerHeight, pathLength };
  }
  return success(changed);
}

function tooHigh(layerHeight: Millimetres, lineWidth: Millimetres) {
  return refusal(
    'layerTooHigh',
    `Layers of ${layerHeight} mm are higher than the lines of the job are wide, ${lineWidth} mm`,
    `Take at most ${lineWidth} mm.`,
  );
}
