import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Layers without an outer contour are few, if there are any. */
const mostOfLayer = 2;

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['job'],
  severity: 'error',
  statement:
    'The mean segment of a feature is not longer than all of its paths, nor that of the outer contour than twice its path in a layer.',
  rationale: 'The time of a job follows from both; swapped or in a wrong unit they turn hours into minutes.',
  source: 'Definition of a mean; every layer has an outer contour, and no segment goes on into the next.',
  example: alike(
    'job',
    { bad: 'mm', good: 'm' },
    (value) => `
features:
  infill: {pathLength: 30 ${value}, meanSegment: 20 cm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
  ),
  *check(profile) {
    for (const [feature, { pathLength, meanSegment }] of Object.entries(profile.data.features)) {
      if (pathLength <= 0) continue;
      const isInEachLayer = feature === 'outerContour' && profile.data.layers > 0;
      const longest =
        isInEachLayer && meanSegment <= pathLength
          ? (mostOfLayer * pathLength) / profile.data.layers
          : pathLength;
      if (meanSegment <= longest) continue;
      const paths = longest === pathLength ? 'all paths together' : 'twice the path in a layer';
      yield {
        path: ['features', feature, 'meanSegment'],
        part: 'value',
        ...(longest < pathLength && { blames: [{ path: ['layers'] }] }),
        message: `Segments of ${shown(meanSegment, 'length')} are longer than ${paths}, ${shown(longest, 'length')}`,
        found: shown(meanSegment, 'length'),
        allowed: `up to ${shown(longest, 'length')}`,
        help: 'Check the units of both: paths are usually in metres, segments in millimetres.',
      };
    }
  },
};
