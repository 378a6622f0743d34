import { largestScaleShare } from '../../bench/facts/instrument-facts.ts';
import { ladderReadings, massResolution, placeOfReading } from '../../bench/flow-ladder/ladder-readings.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { alike, allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'Samples are heavy enough for the scale: its step is at most 0.5 % of what is weighed.',
  rationale: 'A deficit of 5 % has to be seen; a scale that rounds by 1 % blurs the limit.',
  source:
    'JCGM 100:2008 (GUM), 4.3.7 and F.2.2.1: the step of a display as an uncertainty; the 0.5 % are common practice, no source.',
  formula: 'd/m <= 0.005, d step of the display, m mass',
  example: alike(
    'trial',
    { bad: ladder(allFlows, { digits: 2 }), good: ladder(allFlows, { length: 1000, digits: 2 }) },
    (observations) => `scale: {resolution: 0.01 g}${observations}`,
  ),
  *check(profile) {
    const resolution = massResolution(profile);
    const light = ladderReadings(profile).filter(
      ({ mass }) => mass > 0 && resolution > largestScaleShare * mass,
    );
    const lightest = light.toSorted((a, b) => a.mass - b.mass)[0];
    if (lightest === undefined) return;
    const place =
      profile.data.scale === undefined
        ? placeOfReading(profile, lightest)
        : { path: ['scale', 'resolution'] };
    yield {
      ...place,
      part: 'value',
      message: `The scale steps by ${shown(resolution, 'mass')}, which is ${shownNumber(Number(((100 * resolution) / lightest.mass).toPrecision(2)))} % of the lightest sample, ${shown(lightest.mass, 'mass')}; ${light.length} readings are too light for this scale`,
      found: shown(resolution, 'mass'),
      allowed: `up to ${shown(largestScaleShare * lightest.mass, 'mass')}`,
      help: 'Feed a longer piece of filament or use a finer scale next time; check the unit of the resolution.',
    };
  },
};
