import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  kinds: ['job'],
  severity: 'error',
  statement: 'The mean segment of a feature is not longer than all of its paths.',
  rationale: 'The time of a job follows from both; swapped or in another unit they give minutes for hours.',
  source: 'Definition of a mean.',
  example: {
    kind: 'job',
    bad: `
features:
  infill: {pathLength: 30 mm, meanSegment: 20 cm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
    good: `
features:
  infill: {pathLength: 30 m, meanSegment: 20 cm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
  },
  *check(profile) {
    for (const [feature, { pathLength, meanSegment }] of Object.entries(profile.data.features)) {
      if (meanSegment <= pathLength || pathLength <= 0) continue;
      yield {
        path: ['features', feature, 'meanSegment'],
        part: 'value',
        message: `Segments of ${shown(meanSegment, 'length')} cannot make up paths of ${shown(pathLength, 'length')} in all`,
        found: shown(meanSegment, 'length'),
        allowed: `up to ${shown(pathLength, 'length')}`,
        help: 'Check the units of both: paths are mostly metres, segments millimetres.',
      };
    }
  },
};
