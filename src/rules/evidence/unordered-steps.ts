import {
  type LadderReading,
  ladderReadings,
  placeOfReading,
} from '../../bench/flow-ladder/ladder-readings.ts';
import { shown } from '../../units/wording.ts';
import { ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The flows of a ladder go up; a new pass starts again at the lowest.',
  rationale:
    'A hot end that has starved takes a while to recover: a low flow after a high one reads too little.',
  source: 'Common practice, no source.',
  example: {
    kind: 'trial',
    bad: ladder([8, 12, 18, 14, 16, 20, 22, 24]),
    good: ladder([8, 12, 16, 20, 24, 8, 14, 18, 22]),
  },
  *check(profile) {
    const readings = ladderReadings(profile);
    const back = firstStepBack(readings);
    if (back === null) return;
    yield {
      ...placeOfReading(profile, back),
      part: 'value',
      message: `The flow falls back to ${shown(back.flow, 'volumeFlow')} here, which is not the lowest of the ladder`,
      found: shown(back.flow, 'volumeFlow'),
      allowed: 'a flow not below the one before, or the lowest of the ladder',
      help: 'Check the digits. If the order is right, say so in a field note, and run the flows upwards next time.',
    };
  },
};

function firstStepBack(readings: readonly LadderReading[]): LadderReading | null {
  const lowest = Math.min(...readings.map(({ flow }) => flow));
  return (
    readings.find(({ flow }, index) => flow < (readings[index - 1]?.flow ?? flow) && flow !== lowest) ?? null
  );
}
