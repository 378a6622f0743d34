import { ladderReadings } from '../../bench/flow-ladder/ladder-readings.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** The next step of a ladder, which was not weighed any more, is nearer than that (common practice, no source). */
const furthestStep = 2;
/** Fewer are no ladder, which another rule says. */
const fewestSteps = 4;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A halt or a drive slip is noted at a flow of the ladder or just above.',
  rationale: 'Readings from that flow on do not count; a mistyped one drops good readings or keeps bad ones.',
  source: 'Common practice, no source: the steps of a ladder grow by less than a factor of two.',
  example: alike(
    'trial',
    { bad: '280 mm3/s', good: '28 mm3/s' },
    (value) => `
events:
  - {event: halted, commandedFlow: ${value}}`,
  ),
  *check(profile) {
    const flows = ladderReadings(profile).map(({ flow }) => flow);
    const [lowest, furthest] = [Math.min(...flows), furthestStep * Math.max(...flows)];
    for (const [index, { commandedFlow }] of (profile.data.events ?? []).entries()) {
      if (new Set(flows).size < fewestSteps || (commandedFlow >= lowest && commandedFlow <= furthest))
        continue;
      yield {
        path: ['events', index, 'commandedFlow'],
        part: 'value',
        message: `An event is noted at ${shown(commandedFlow, 'volumeFlow')}, far from the flows of the ladder, ${shown(lowest, 'volumeFlow')} to ${shown(Math.max(...flows), 'volumeFlow')}`,
        found: shown(commandedFlow, 'volumeFlow'),
        allowed: `${shown(lowest, 'volumeFlow')} to ${shown(furthest, 'volumeFlow')}`,
        help: 'Check the digits and the unit of the flow.',
      };
    }
  },
};
