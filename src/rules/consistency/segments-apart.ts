import type { AnyProfile } from '../../registry/profile.ts';
import { shown } from '../../units/wording.ts';
import { type Feature, type FeatureRatio, fittingText, unfitFeatures } from '../engine/feature-ratios.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Contours run beside each other, hatches lie above each other, overhangs are stretches of contours. */
const ratios: readonly FeatureRatio[] = [
  { of: 'innerContour', to: 'outerContour', low: 1 / 4, high: 4 },
  { of: 'overhang', to: 'outerContour', low: 1 / 10, high: 4 },
  { of: 'topSurface', to: 'infill', low: 1 / 5, high: 5 },
  { of: 'firstLayer', to: 'topSurface', low: 1 / 5, high: 5 },
  { of: 'bridge', to: 'infill', low: 1 / 8, high: 5 },
  { of: 'travel', to: 'outerContour', low: 1 / 4, high: 6 },
];

/** In mm. Shorter segments of a contour are facets of a curve, and say nothing about the way to the next one. */
const facet = 3;

export const rule: ProfileRule<'job' | 'policy'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['job', 'policy'],
  severity: 'warning',
  statement: 'Features that follow each other in a part have segments of similar length.',
  rationale:
    'The segment length decides what speed a move reaches; a lost digit changes the time of a feature tenfold.',
  source:
    'Common practice, no source: inner and outer contours within a factor of 4, hatches of surface, infill and first layer of 5; contours of short facets are not compared with travel.',
  example: {
    kind: 'policy',
    bad: `
typicalSegments: {firstLayer: 25 mm, outerContour: 20 mm, innerContour: 20 mm, infill: 30 mm, topSurface: 250 mm, bridge: 20 mm, overhang: 10 mm, travel: 40 mm}`,
    good: `
typicalSegments: {firstLayer: 25 mm, outerContour: 20 mm, innerContour: 20 mm, infill: 30 mm, topSurface: 25 mm, bridge: 20 mm, overhang: 10 mm, travel: 40 mm}`,
  },
  *check(profile) {
    const segments = segmentsOf(profile);
    if (segments === null) return;
    for (const unfit of unfitFeatures(segments.lengths, ratiosFor(segments.lengths))) {
      const { feature, partner, value, partnerValue } = unfit;
      yield {
        path: segments.pathOf(feature),
        part: 'value',
        blames: [{ path: segments.pathOf(partner) }],
        message: `Segments of ${shown(value, 'length')} for ${feature} do not match ${shown(partnerValue, 'length')} for ${partner}`,
        found: shown(value, 'length'),
        allowed: fittingText(unfit, (length) => shown(length, 'length')),
        help: 'Check the digits and units of both.',
      };
    }
  },
};

function ratiosFor({ outerContour = 0 }: Partial<Record<Feature, number>>): readonly FeatureRatio[] {
  return outerContour < facet ? ratios.filter(({ of }) => of !== 'travel') : ratios;
}

function segmentsOf(profile: AnyProfile) {
  if (profile.kind === 'policy') {
    return {
      lengths: profile.data.typicalSegments ?? {},
      pathOf: (feature: Feature) => ['typicalSegments', feature],
    };
  }
  if (profile.kind !== 'job') return null;
  const { features } = profile.data;
  const lengths: Partial<Record<Feature, number>> = Object.fromEntries(
    Object.entries(features).map(([feature, { meanSegment }]) => [feature, meanSegment]),
  );
  return {
    lengths,
    pathOf: (feature: Feature) => ['features', feature, 'meanSegment'],
  };
}
