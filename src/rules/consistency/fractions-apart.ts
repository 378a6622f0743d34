import { shown } from '../../units/wording.ts';
import { type FeatureRatio, fittingText, unfitFeatures } from '../engine/feature-ratios.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** What is seen is not printed faster than what is hidden, and nothing is slower than a fifth of its neighbour. */
const ratios: readonly FeatureRatio[] = [
  { of: 'outerContour', to: 'innerContour', low: 1 / 5, high: 1 },
  { of: 'innerContour', to: 'infill', low: 1 / 5, high: 2 },
  { of: 'topSurface', to: 'infill', low: 1 / 8, high: 1.5 },
  { of: 'firstLayer', to: 'infill', high: 1 },
  { of: 'infill', to: 'travel', high: 1.5, low: 1 / 5 },
  { of: 'bridge', to: 'outerContour', low: 1 / 5, high: 3 },
  { of: 'overhang', to: 'outerContour', low: 1 / 5, high: 3 },
];

/** What hangs in the air is cooled at least as much as what rests on something; walls and tops are cooled alike, if at all. */
const fanRatios: readonly FeatureRatio[] = [
  ...(['bridge', 'overhang'] as const).flatMap((of) => [
    { of, to: 'outerContour', low: 1 } as const,
    { of, to: 'innerContour', low: 1 } as const,
    { of, to: 'infill', low: 1 } as const,
  ]),
  { of: 'outerContour', to: 'innerContour', low: 1 / 5, high: 5 },
  { of: 'topSurface', to: 'innerContour', low: 1 / 5, high: 5 },
  { of: 'topSurface', to: 'outerContour', low: 1 / 5, high: 5 },
];

const judged = [
  { key: 'fractions', ratios },
  { key: 'accelerationFractions', ratios },
  { key: 'fan', ratios: fanRatios },
] as const;

export const rule: ProfileRule<'policy'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['policy'],
  severity: 'warning',
  statement:
    'Speed fractions of a policy are lowest for visible features, higher for hidden ones, and travel is not the slowest; its fan is fastest for bridges and overhangs.',
  rationale:
    'A fraction that lost a digit makes one feature of every part ten times slower, or lets bridges sag.',
  source:
    'Common practice, no source: outer contours at most as fast as inner ones, those at most twice the infill; bridges cooled at least as much as contours and infill; contours and tops within a factor of 5.',
  example: {
    kind: 'policy',
    bad: `
fractions: {firstLayer: 30 %, outerContour: 75 %, innerContour: 90 %, infill: 10 %, topSurface: 60 %, bridge: 40 %, overhang: 30 %, travel: 100 %}`,
    good: `
fractions: {firstLayer: 30 %, outerContour: 75 %, innerContour: 90 %, infill: 100 %, topSurface: 60 %, bridge: 40 %, overhang: 30 %, travel: 100 %}`,
  },
  *check(profile) {
    for (const { key, ratios: wanted } of judged) {
      for (const unfit of unfitFeatures(profile.data[key] ?? {}, wanted)) {
        const { feature, partner, value, partnerValue } = unfit;
        yield {
          path: [key, feature],
          part: 'value',
          message: `${shown(value, 'ratio')} for ${feature} does not match ${shown(partnerValue, 'ratio')} for ${partner}`,
          found: shown(value, 'ratio'),
          allowed: fittingText(unfit, (fraction) => shown(fraction, 'ratio')),
          help: 'Check the digits of both; if it is meant, acknowledge the finding.',
        };
      }
    }
  },
};
