import {
  type LadderReading,
  ladderReadings,
  placeOfReading,
} from '../../bench/flow-ladder/ladder-readings.ts';
import { shown } from '../../units/wording.ts';
import { ladder } from '../engine/examples.ts';
import { repeatedRows } from '../engine/repeated-rows.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** What in a shuffled run goes back, of the changes of flow, and is out of place, give or take what chance does to few (common practice, no source). */
const shuffled = { shareBack: 0.25, stepsBack: 2, outOfPlace: 2 };

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The flows of a ladder go up, pass by pass, or come in random order.',
  rationale:
    'A hot end that has starved takes a while to recover: a low flow after a high one reads too little. Random order on purpose tells drift from the limit; one step back among many up is a slip, or a piece that was fed again.',
  source: `Common practice, no source; random order: NIST/SEMATECH e-Handbook of Statistical Methods, section 5.3.1 (from memory). At least ${shuffled.stepsBack} steps back, in ${100 * shuffled.shareBack} % of the changes of flow, are taken for random where the ladder goes neither up nor down but for one piece.`,
  example: {
    kind: 'trial',
    bad: ladder([8, 12, 18, 14, 16, 20, 22, 24]),
    good: ladder([8, 12, 16, 20, 24, 8, 14, 18, 22]),
  },
  *check(profile) {
    // Rows that were pasted once more are found as such.
    const pasted = new Set(repeatedRows(profile).flatMap(({ rows }) => rows.map(({ row }) => row)));
    const readings = ladderReadings(profile).filter(({ row }) => !pasted.has(row));
    const back = firstStepBack(readings);
    if (back === null || isShuffled(readings)) return;
    yield {
      ...placeOfReading(profile, back),
      part: 'value',
      message: `The flow falls back to ${shown(back.flow, 'volumeFlow')} here, which is not the lowest of the ladder`,
      found: shown(back.flow, 'volumeFlow'),
      allowed: 'a flow not below the one before, or the lowest of the ladder',
      help: 'Check the digits. If the order is right, say so in a field note; next time run the flows upwards, or all in random order.',
    };
  },
};

function firstStepBack(readings: readonly LadderReading[]): LadderReading | null {
  const lowest = Math.min(...readings.map(({ flow }) => flow));
  return (
    readings.find(({ flow }, index) => flow < (readings[index - 1]?.flow ?? flow) && flow !== lowest) ?? null
  );
}

function isShuffled(readings: readonly LadderReading[]): boolean {
  const flows = readings.map(({ flow }) => flow);
  const lowest = Math.min(...flows);
  const passes = flows.filter((flow) => flow === lowest).length > 1;
  const changes = flows.slice(1).filter((flow, index) => flow !== flows[index]).length;
  const back = flows.filter(
    (flow, index) => flow < (flows[index - 1] ?? flow) && !(passes && flow === lowest),
  ).length;
  const least = Math.max(shuffled.stepsBack, shuffled.shareBack * changes);
  const falling = flows.map((flow) => -flow);
  return back >= least && [flows, falling].every((each) => outOfPlace(each) >= shuffled.outOfPlace);
}

/** How many numbers must be moved at least for all to be in order: those beside the longest row that is (patience sorting). */
function outOfPlace(numbers: readonly number[]): number {
  // The lowest number that a row of each length can end with so far.
  const ends: number[] = [];
  for (const number of numbers) {
    const place = ends.findIndex((end) => end > number);
    ends[place < 0 ? ends.length : place] = number;
  }
  return numbers.length - ends.length;
}
