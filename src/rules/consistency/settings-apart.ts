import type { Hit } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import { type Feature, type FeatureRatio, fittingText, unfitFeatures } from '../engine/feature-ratios.ts';
import type { ProfileRule } from '../engine/rule.ts';

type Settings = NonNullable<Profile<'trial'>['data']['settings']>;

/** Between the gentlest and the hardest acceleration of one print. */
const largestRatios = { gentle: 25, other: 8 };
/** What has to stick, to hang or to look even is printed far more gently than the rest. */
const gentle: readonly string[] = ['firstLayer', 'outerContour', 'topSurface', 'bridge', 'overhang'];

/**
 * How much faster, or harder, a feature may be than one beside it that needs less care, and how much slower a surface; infill is
 * compared with travel alone, since flow may hold it back.
 */
const order: readonly FeatureRatio[] = [
  { of: 'outerContour', to: 'innerContour', high: 1 },
  { of: 'firstLayer', to: 'innerContour', high: 1.1 },
  { of: 'overhang', to: 'outerContour', high: 1.25 },
  { of: 'topSurface', to: 'outerContour', low: 1 / 15 },
  { of: 'innerContour', to: 'travel', high: 1.5 },
  { of: 'infill', to: 'travel', high: 1.5 },
];

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: `The accelerations of a print lie within a factor of ${largestRatios.other}, of gentle features ${largestRatios.gentle}; outer contours are no faster than inner ones.`,
  rationale: 'A setting that lost a digit puts the calculated time off, and the time model gets the blame.',
  source:
    'Common practice, no source: the first layer is set to a third or so of the infill, and on fast machines to a tenth or less; outer contours go at most as fast as inner ones, first layers hardly faster, overhangs hardly faster than their contours, and travel is hardly slower than what is printed.',
  formula: `v and a of outer contours <= those of inner ones, of first layers <= 1.1 times those, of overhangs <= 1.25 times those of outer contours, of inner contours and infill <= 1.5 times those of travel, of top surfaces >= 1/15 of those of outer contours; max(a) <= ${largestRatios.other} min(a) with min over inner contours, infill and travel; max(a) <= ${largestRatios.gentle} min(a) over all`,
  example: alike(
    'trial',
    { bad: '200 mm/s2', good: '3000 mm/s2' },
    (value) => `
settings:
  outerContour: {speed: 120 mm/s, acceleration: ${value}}
  infill: {speed: 200 mm/s, acceleration: 6000 mm/s2}`,
  ),
  *check(profile) {
    const settings = Object.entries(profile.data.settings ?? {}).map(
      ([feature, { acceleration }]): Setting => ({ feature, acceleration }),
    );
    const hardest = Math.max(...settings.map(({ acceleration }) => acceleration));
    const others = settings.filter(
      ({ feature, acceleration }) => acceleration === hardest || !gentle.includes(feature),
    );
    const odd = oddOnes(others, largestRatios.other);
    const hits = odd.length > 0 ? odd : oddOnes(settings, largestRatios.gentle);
    yield* hits.length > 0 ? hits : outOfOrder(profile.data.settings ?? {}, 'acceleration');
    yield* outOfOrder(profile.data.settings ?? {}, 'speed');
  },
};

/** The features whose speed, or acceleration, does not fit that of others. */
function* outOfOrder(settings: Settings, of: 'speed' | 'acceleration'): Generator<Hit> {
  const figures: Partial<Record<Feature, number>> = Object.fromEntries(
    Object.entries(settings).map(([feature, setting]) => [feature, setting[of]]),
  );
  const show = (value: number) => shown(value, of);
  for (const unfit of unfitFeatures(figures, order)) {
    const { feature, partner, value, partnerValue } = unfit;
    yield {
      path: ['settings', feature, of],
      part: 'value',
      // The time of the print tells more of a speed that slipped.
      blames: [feature, partner].map((each) => ({ path: ['settings', each, of] })),
      message: `${show(value)} for ${feature} does not match ${show(partnerValue)} for ${partner}`,
      found: show(value),
      allowed: fittingText(unfit, show),
      help: 'Check the digits of both; if the print was set so, acknowledge the finding.',
    };
  }
}

interface Setting {
  readonly feature: string;
  readonly acceleration: number;
}

function oddOnes(settings: readonly Setting[], largestRatio: number): Hit[] {
  const accelerations = settings.map(({ acceleration }) => acceleration).sort((a, b) => a - b);
  const middle = accelerations[Math.floor(accelerations.length / 2)] ?? 0;
  const [low = 0, high = 0] = [accelerations[0], accelerations.at(-1)];
  if (low <= 0 || high <= largestRatio * low) return [];
  // Of the two ends, the one that is farther from the middle has the slip.
  const odd = middle / low >= high / middle ? low : high;
  const rest = odd === low ? high : low;
  const bound = shown(odd === low ? high / largestRatio : low * largestRatio, 'acceleration');
  return settings
    .filter(({ acceleration }) => acceleration === odd)
    .map(({ feature }) => ({
      path: ['settings', feature, 'acceleration'],
      part: 'value',
      message: `${shown(odd, 'acceleration')} for ${feature} does not match ${shown(rest, 'acceleration')} elsewhere in the print`,
      found: shown(odd, 'acceleration'),
      allowed: `${odd === low ? 'from' : 'up to'} ${bound}`,
      help: 'Check the digits; if the print was set so, acknowledge the finding.',
    }));
}
