import {
  type LadderReading,
  ladderReadings,
  massResolution,
  placeOfReading,
} from '../../bench/flow-ladder/ladder-readings.ts';
import { median } from '../../statistics/middle.ts';
import type { Grams } from '../../units/canonical.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { alike, allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** As a fraction of what a piece weighs: a step of 0.01 g passes on one metre of any plastic, one foamed to 0.4 g/cm3 too. */
const largestShare = 0.0105;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'Samples are heavy enough for the scale: its step is at most 1 % of what a fed piece weighs.',
  rationale:
    'A deficit of 5 % has to be seen; a step of 1 % alone is an uncertainty of 0.3 %, and what is coarser blurs the limit.',
  source:
    'JCGM 100:2008 (GUM), 4.3.7 and F.2.2.1: the step of a display as an uncertainty; the 1 % are common practice, no source: 0.01 g on 1 m of the lightest filament of 1.75 mm.',
  formula:
    'd/m <= 0.0105, d step of the display, m = l q mass of a piece in full, l its length, q the median mass per length',
  example: alike(
    'trial',
    {
      bad: ladder(allFlows, { length: 200, digits: 2 }),
      good: ladder(allFlows, { length: 1000, digits: 2 }),
    },
    (observations) => `scale: {resolution: 0.01 g}${observations}`,
  ),
  *check(profile) {
    const resolution = massResolution(profile);
    const pieces = wholePieces(ladderReadings(profile));
    const light = pieces.filter(({ whole }) => resolution > largestShare * whole);
    const [lightest] = light.toSorted((a, b) => a.whole - b.whole);
    if (lightest === undefined) return;
    const place =
      profile.data.scale === undefined
        ? placeOfReading(profile, lightest.reading)
        : { path: ['scale', 'resolution'] };
    yield {
      ...place,
      part: 'value',
      message: `The scale steps by ${shown(resolution, 'mass')}, which is ${shownNumber(Number(((100 * resolution) / lightest.whole).toPrecision(2)))} % of the lightest piece, ${shown(Number(lightest.whole.toPrecision(3)), 'mass')}; ${light.length} readings are too light for this scale`,
      found: shown(resolution, 'mass'),
      allowed: `up to ${shown(Number((largestShare * lightest.whole).toPrecision(2)), 'mass')}`,
      help: 'Feed a longer piece of filament or use a finer scale next time; check the unit of the resolution.',
    };
  },
};

interface WholePiece {
  readonly reading: LadderReading;
  /** What the piece weighs where the hot end delivers all of it. */
  readonly whole: Grams;
}

/** A starved piece is lighter, but the scale was chosen for what was fed. */
function wholePieces(readings: readonly LadderReading[]): WholePiece[] {
  const weighed = readings.filter(({ mass, feedLength }) => mass > 0 && feedLength > 0);
  const perLength = median(weighed.map(({ mass, feedLength }) => mass / feedLength)) ?? 0;
  return weighed.map((reading) => ({ reading, whole: perLength * reading.feedLength }));
}
