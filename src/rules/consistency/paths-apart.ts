import type { Job } from '../../registry/generated/documents.ts';
import { metres } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import { type Feature, type FeatureRatio, fittingText, unfitFeatures } from '../engine/feature-ratios.ts';
import type { ProfileRule } from '../engine/rule.ts';

/**
 * Every contour has up to eight others inside, seldom none. What rests on the first layer has a top somewhere above:
 * the top surfaces cover at least the footprint, less its brim. Infill lies within contours, and the head travels between
 * them. Overhangs are contours, the outer ones and those inside, where nothing is below; bridges fill what they enclose.
 */
const ratios: readonly FeatureRatio[] = [
  { of: 'innerContour', to: 'outerContour', low: 0.12, high: 8 },
  { of: 'topSurface', to: 'firstLayer', low: 0.16, high: 60 },
  { of: 'infill', to: 'outerContour', low: 0.01, high: 60 },
  { of: 'travel', to: 'outerContour', low: 0.05, high: 3 },
  { of: 'overhang', to: 'outerContour', high: 9 },
  { of: 'bridge', to: 'outerContour', high: 60 },
];

/** A part of one wall that goes round and round: the head hardly travels, and there is hardly anything inside of the wall. */
const oneWall = { travel: 0.03, infill: 0.1 };

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['job'],
  severity: 'warning',
  statement:
    'Path lengths match: contours with each other, with infill, overhangs, bridges and travel; top surfaces with the first layer.',
  rationale: 'Time and mass of a job follow from its paths; a lost digit changes both.',
  source:
    'Plane geometry: what rests on the first layer ends in a top surface; the factors are common practice, no source.',
  formula:
    '0.12 <= L_inner/L_outer <= 8; 0.16 <= L_top/L_first <= 60; 0.01 <= L_infill/L_outer <= 60; 0.05 <= L_travel/L_outer <= 3; L_overhang/L_outer <= 9; L_bridge/L_outer <= 60; no lower bounds where L_travel/L_outer <= 0.03 and L_infill/L_outer <= 0.1',
  example: alike(
    'job',
    { bad: '1.3 m', good: '13 m' },
    (value) => `
features:
  outerContour: {pathLength: 14 m, meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}
  innerContour: {pathLength: ${value}, meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}
  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
  ),
  *check(profile) {
    const lengths = lengthsOf(profile.data);
    for (const unfit of unfitFeatures(lengths, isOneWall(lengths) ? upwards : ratios)) {
      const { feature, partner, value, partnerValue } = unfit;
      yield {
        path: ['features', feature, 'pathLength'],
        part: 'value',
        message: `Paths of ${metres(value)} for ${feature} do not match ${metres(partnerValue)} for ${partner}`,
        found: metres(value),
        allowed: fittingText(unfit, metres),
        help: 'Check the digits and units of both; if the part is like that, acknowledge the finding.',
      };
    }
  },
};

/** What is left to judge of a part that has little besides its wall. */
const upwards = ratios.map(
  ({ of, to, high }): FeatureRatio => ({ of, to, ...(high !== undefined && { high }) }),
);

function isOneWall({ outerContour: wall = 0, travel = 0, infill = 0 }: Partial<Record<Feature, number>>) {
  return travel <= oneWall.travel * wall && infill <= oneWall.infill * wall;
}

function lengthsOf({ features }: Job): Partial<Record<Feature, number>> {
  return Object.fromEntries(
    Object.entries(features).map(([feature, { pathLength }]) => [feature, pathLength]),
  );
}
