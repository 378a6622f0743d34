import type { DoubtfulReading } from '../../bench/doubt/doubtful-reading.ts';
import { trialRun } from '../../bench/facts/fact.ts';
import { placeOfReading } from '../../bench/flow-ladder/ladder-readings.ts';
import { methodOf } from '../../bench/methods.ts';
import { trialObservations } from '../../bench/sheet/trial-observations.ts';
import type { Profile } from '../../registry/profile.ts';
import { wordsOf } from '../../text/words.ts';
import type { Dimension } from '../../units/dimension.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { ladder } from '../engine/examples.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'Every reading of a trial is what its repeats and the readings beside it let expect.',
  rationale:
    'One misread digit shifts the result or hides it; nobody sees that any more once a limit is adopted.',
  source:
    'JCGM 100:2008 (GUM), 4.2.6 and G.3: a deviation far beyond what repeats spread; one sound sheet in 200 by chance (common practice, no source).',
  formula:
    "n P(|T| > |y - y'|/u) < 0.005, y' expected from the other readings, u its standard deviation, T Student's t, n readings",
  example: {
    kind: 'trial',
    bad: ladder([8, 12, 14, 16, 18, 20, 22, 24]).replace('14, 400, 1.225', '14, 400, 1.025'),
    good: ladder([8, 12, 14, 16, 18, 20, 22, 24]),
  },
  *check(profile, context) {
    for (const doubt of doubtsOf(profile, context)) {
      const dimension = methodOf(profile.data.method).columns[doubt.column] ?? 'count';
      const expected = shown(doubt.expected, dimension);
      yield {
        ...placeOfReading(profile, doubt),
        part: 'value',
        message: messageOf(doubt, dimension),
        found: shown(doubt.found, dimension),
        allowed: `about ${expected}`,
        help:
          doubt.rival !== null
            ? 'Compare both rows with the bench sheet, or read that step once more: a third reading tells which of them is off.'
            : profile.data.method === 'flowLadder'
              ? 'Compare the row with the bench sheet, or weigh a new sample. If the drive slipped or the feed halted, note it under `events`; readings from there on do not count.'
              : 'Compare the row with the bench sheet, or read once more. If it is right, say in a field note what was different there, and acknowledge the finding.',
      };
    }
  },
};

function doubtsOf(profile: Profile<'trial'>, { registry, reduce }: RuleContext): readonly DoubtfulReading[] {
  const method = methodOf(profile.data.method);
  const observations = trialObservations(profile, method);
  // What cannot be reduced is found as such, with the reading that is in the way.
  if (!observations.ok || !reduce(profile.id).ok) return [];
  return method.doubtful(observations.value, trialRun(registry, profile, method.facts));
}

function messageOf(doubt: DoubtfulReading, dimension: Dimension): string {
  const { column, found, rival } = doubt;
  const read = `The ${wordsOf(column)} of ${shown(found, dimension)} is ${difference(doubt, dimension)} than`;
  const told = `the others tell that to ${spread(doubt, dimension)}`;
  if (rival === null)
    return `${read} its repeats and the readings beside it let expect, ${shown(doubt.expected, dimension)}; ${told}`;
  return `${read} its repeat in row ${rival.row}, ${shown(rival.found, dimension)}, and one of both is off; ${told}`;
}

const rough = (value: number) => Number(value.toPrecision(2));

function difference({ found, expected, isRelative }: DoubtfulReading, dimension: Dimension): string {
  const more = found > expected ? 'more' : 'less';
  return isRelative
    ? `${shownNumber(rough(100 * Math.abs(found / expected - 1)))} % ${more}`
    : `${shown(rough(Math.abs(found - expected)), apart(dimension))} ${more}`;
}

function spread({ spread: deviation, isRelative }: DoubtfulReading, dimension: Dimension): string {
  return isRelative ? `${shownNumber(rough(100 * deviation))} %` : shown(rough(deviation), apart(dimension));
}

/** The dimension of a difference. */
function apart(dimension: Dimension): Dimension {
  return dimension === 'temperature' ? 'temperatureDifference' : dimension;
}
