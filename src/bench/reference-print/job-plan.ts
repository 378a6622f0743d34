import type { Corner } from '../../physics/corner.ts';
import type { PathPlace, PrintPath, PrintPlan } from '../../physics/print-time.ts';
import type { Job } from '../../registry/generated/documents.ts';
import type { MillimetresPerSecond, MillimetresPerSecondSquared, Seconds } from '../../units/canonical.ts';

export type JobFeature = keyof Job['features'];

/** What the time model must know of a job. */
export type JobPaths = Pick<Job, 'layers' | 'corners' | 'features'>;

/** How the machine is set for one kind of path. */
export interface PathSettings {
  /** Commanded speed. */
  readonly speed: MillimetresPerSecond;
  readonly acceleration: MillimetresPerSecondSquared;
}

/** What a print takes besides its ways. */
export interface PrintPauses {
  readonly layerChange: Seconds;
  /** A travel move's, besides its way. */
  readonly travel: Seconds;
  readonly shortestLayerTime: Seconds;
}

/** The corner of a job that states none: a right angle followed within 0.05 mm (common practice, no source). */
const usualCorner: Corner = { deflection: 90, tolerance: 0.05 };

/** A job as the time model sees it. Paths for which there are no settings are left out. */
export function jobPlan(
  job: JobPaths,
  settings: ReadonlyMap<JobFeature, PathSettings>,
  pauses: PrintPauses,
): PrintPlan<JobFeature> {
  const paths = new Map<JobFeature, PrintPath>();
  for (const [feature, { speed, acceleration }] of settings) {
    const asked = job.features[feature];
    if (asked === undefined) continue;
    const travels = feature === 'travel';
    paths.set(feature, {
      length: asked.pathLength,
      meanSegment: asked.meanSegment,
      speed,
      acceleration,
      // Between two printed paths the head comes to rest, where it draws the filament back and pushes it on again.
      corner: travels ? null : (job.corners ?? usualCorner),
      pause: travels ? pauses.travel : 0,
      place: placeOf(feature, job),
    });
  }
  const { layerChange, shortestLayerTime } = pauses;
  return { layers: job.layers, paths, layerChange, shortestLayerTime };
}

function placeOf(feature: JobFeature, { features }: JobPaths): PathPlace {
  if (feature === 'travel' || features.firstLayer === undefined) return 'allLayers';
  return feature === 'firstLayer' ? 'firstLayer' : 'layersAbove';
}
