import type { Hit } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Between the gentlest and the hardest acceleration of one print. */
const largestRatios = { gentle: 25, other: 8 };
/** What has to stick, to hang or to look even is printed far more gently than the rest. */
const gentle: readonly string[] = ['firstLayer', 'outerContour', 'topSurface', 'bridge', 'overhang'];

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: `The accelerations of a print lie within a factor of ${largestRatios.other}, of gentle features ${largestRatios.gentle}; careful features are no faster than infill.`,
  rationale: 'A setting that lost a digit puts the calculated time off, and the time model gets the blame.',
  source:
    'Common practice, no source: the first layer is set to a third or so of the infill, and on fast machines to a tenth or less.',
  formula: `v <= max(v of inner contours and infill); max(a) <= ${largestRatios.other} min(a) with min over inner contours, infill and travel; max(a) <= ${largestRatios.gentle} min(a) over all`,
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
    const hits = oddOnes(others, largestRatios.other);
    yield* hits.length > 0 ? hits : oddOnes(settings, largestRatios.gentle);
    yield* hasty(profile.data.settings ?? {});
  },
};

/** Bridges are left out: some hang best where they are drawn fast. */
const careful = ['firstLayer', 'outerContour', 'topSurface', 'overhang'] as const;

function* hasty(settings: NonNullable<Profile<'trial'>['data']['settings']>): Generator<Hit> {
  const { innerContour, infill } = settings;
  // Of one alone nothing tells whether it is too low itself.
  if (innerContour === undefined || infill === undefined) return;
  const fastest = Math.max(innerContour.speed, infill.speed);
  for (const feature of careful) {
    const { speed } = settings[feature] ?? {};
    if (speed === undefined || speed <= fastest) continue;
    yield {
      path: ['settings', feature, 'speed'],
      part: 'value',
      message: `${shown(speed, 'speed')} for ${feature} is more than ${shown(fastest, 'speed')} for infill and inner contours`,
      found: shown(speed, 'speed'),
      allowed: `up to ${shown(fastest, 'speed')}`,
      help: 'Check the digits; if the print was set so, acknowledge the finding.',
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
