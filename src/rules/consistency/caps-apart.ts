import { shown } from '../../units/wording.ts';
import { type Feature, type FeatureRatio, fittingText, unfitFeatures } from '../engine/feature-ratios.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** What is capped is slow for reasons of its own, but within a few times of each other. */
const ratios: readonly FeatureRatio[] = [
  { of: 'firstLayer', to: 'bridge', low: 1 / 5, high: 4 },
  { of: 'overhang', to: 'bridge', low: 1 / 5, high: 4 },
  { of: 'overhang', to: 'firstLayer', low: 1 / 5, high: 5 },
  { of: 'topSurface', to: 'firstLayer', low: 1 / 2, high: 8 },
  { of: 'topSurface', to: 'bridge', low: 1 / 2, high: 8 },
  { of: 'outerContour', to: 'innerContour', low: 1 / 6, high: 2 },
  { of: 'innerContour', to: 'infill', low: 1 / 6, high: 2 },
  { of: 'topSurface', to: 'outerContour', low: 1 / 6, high: 6 },
];

export const rule: ProfileRule<'policy'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['policy'],
  severity: 'warning',
  statement: 'Caps of a policy on features that are printed slowly are within a few times of each other.',
  rationale: 'A cap that gained a digit caps nothing: bridges and first layers run at the speed of infill.',
  source:
    'Common practice, no source: first layer, bridges and overhangs within a factor of 5, top surfaces half to eight times as fast.',
  example: {
    kind: 'policy',
    bad: `
caps:
  firstLayer: {speed: 40 mm/s, acceleration: 1000 mm/s2, reason: Adhesion to the bed}
  topSurface: {speed: 120 mm/s, acceleration: 3000 mm/s2, reason: An even surface}
  bridge: {speed: 250 mm/s, acceleration: 1500 mm/s2, reason: Sag before the bead sets}`,
    good: `
caps:
  firstLayer: {speed: 40 mm/s, acceleration: 1000 mm/s2, reason: Adhesion to the bed}
  topSurface: {speed: 120 mm/s, acceleration: 3000 mm/s2, reason: An even surface}
  bridge: {speed: 50 mm/s, acceleration: 1500 mm/s2, reason: Sag before the bead sets}`,
  },
  *check({ data: { caps = {} } }) {
    for (const of of ['speed', 'acceleration'] as const) {
      const figures: Partial<Record<Feature, number>> = Object.fromEntries(
        Object.entries(caps).flatMap(([feature, cap]) => (cap[of] === undefined ? [] : [[feature, cap[of]]])),
      );
      const show = (value: number) => shown(value, of);
      for (const unfit of unfitFeatures(figures, ratios)) {
        const { feature, partner, value, partnerValue } = unfit;
        yield {
          path: ['caps', feature, of],
          part: 'value',
          message: `A cap of ${show(value)} for ${feature} does not match ${show(partnerValue)} for ${partner}`,
          found: show(value),
          allowed: fittingText(unfit, show),
          help: 'Check the digits and units of both; if it is meant, acknowledge the finding.',
        };
      }
    }
  },
};
