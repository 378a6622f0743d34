import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['job'],
  severity: 'error',
  statement: 'The mean segment of a feature is not longer than all of its paths.',
  rationale: 'The time of a job follows from both; swapped or in a wrong unit they turn hours into minutes.',
  source: 'Definition of a mean.',
  example: alike(
    'job',
    { bad: 'mm', good: 'm' },
    (value) => `
features:
  infill: {pathLength: 30 ${value}, meanSegment: 20 cm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
  ),
  *check(profile) {
    for (const [feature, { pathLength, meanSegment }] of Object.entries(profile.data.features)) {
      if (meanSegment <= pathLength || pathLength <= 0) continue;
      yield {
        path: ['features', feature, 'meanSegment'],
        part: 'value',
        message: `Segments of ${shown(meanSegment, 'length')} are longer than all paths together, ${shown(pathLength, 'length')}`,
        found: shown(meanSegment, 'length'),
        allowed: `up to ${shown(pathLength, 'length')}`,
        help: 'Check the units of both: paths are usually in metres, segments in millimetres.',
      };
    }
  },
};
