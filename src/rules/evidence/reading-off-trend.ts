import {
  type LadderReading,
  ladderReadings,
  massResolution,
  placeOfReading,
} from '../../bench/flow-ladder/ladder-readings.ts';
import { mostOffTrend, type OffTrend } from '../../bench/flow-ladder/ladder-trend.ts';
import type { Profile } from '../../registry/profile.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { ladder } from '../engine/examples.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

/** Below this share extrusion past its onset may scatter, whatever the others do (common practice, no source). */
const leastDeviation = 0.08;
const standardDeviations = 4;
/** More of them are no slips of a pen, but an unsteady ladder. */
const mostSlips = 3;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'Every sample of a ladder weighs what its repeats and the neighbouring steps suggest.',
  rationale: 'The deficit that decides is a few per cent, so one misread digit shifts the limit or hides it.',
  source: `JCGM 100:2008 (GUM), 4.2.6 and G.3: a deviation far beyond what repeats spread; ${standardDeviations} standard deviations and ${leastDeviation * 100} % are common practice, no source.`,
  formula: `|ln(m/m') | > max(${leastDeviation}, ${standardDeviations} s), m' expected from the falling trend of m per fed length without this piece, s spread of the others about it`,
  example: {
    kind: 'trial',
    bad: ladder([8, 12, 14, 16, 18, 20, 22, 24]).replace('14, 400, 1.225', '14, 400, 1.025'),
    good: ladder([8, 12, 14, 16, 18, 20, 22, 24]),
  },
  *check(profile, context) {
    for (const { reading, expected, deviation, spread } of slipsOf(profile, context)) {
      const share = shownNumber(Number((100 * Math.abs(Math.expm1(deviation))).toPrecision(2)));
      yield {
        ...placeOfReading(profile, reading),
        part: 'value',
        message: `${shown(reading.mass, 'mass')} at ${shown(reading.flow, 'volumeFlow')} is ${share} % ${deviation > 0 ? 'more' : 'less'} than its repeats and the neighbouring steps suggest, ${shown(expected, 'mass')}; the other samples spread by ${shownNumber(Number((100 * spread).toPrecision(2)))} %`,
        found: shown(reading.mass, 'mass'),
        allowed: `about ${shown(expected, 'mass')}`,
        help: 'Read the digits again, or weigh a new sample. If the drive slipped or the feed halted, note it under `events`; readings from there on do not count.',
      };
    }
  },
};

/** The slips of a ladder, one after another, each judged without those before it. */
function slipsOf(profile: Profile<'trial'>, { reduce }: RuleContext): OffTrend[] {
  // What cannot be reduced is found as such, with the reading that is in the way.
  if (!reduce(profile.id).ok) return [];
  const resolution = massResolution(profile);
  const found: OffTrend[] = [];
  let rest = countedReadings(profile);
  while (found.length < mostSlips) {
    const worst = mostOffTrend(rest, resolution);
    if (worst === null || !isSlip(worst)) break;
    found.push(worst);
    rest = rest.filter((reading) => reading !== worst.reading);
  }
  return found;
}

function isSlip({ deviation, spread }: OffTrend): boolean {
  return Math.abs(deviation) > Math.max(leastDeviation, standardDeviations * spread);
}

/** The readings before the first event: what came out after a halt or a slip of the drive tells nothing. */
function countedReadings(profile: Profile<'trial'>): readonly LadderReading[] {
  const end = Math.min(...(profile.data.events ?? []).map(({ commandedFlow }) => commandedFlow));
  return ladderReadings(profile).filter(({ flow }) => flow < end);
}
