import { siblingLimit } from '../../evidence/sibling-limits.ts';
import { trialLimit } from '../../evidence/trial-limit.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Grades and temperatures of a family differ by less (common practice, no source). */
const largestFactor = 2.5;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The limit of a trial is not far above the others of the same nozzle and polymer family.',
  rationale:
    'The hot end matters more than the grade; a limit far above the others is a mistake or a different setup.',
  source:
    'Mackay et al., J. Rheology 61 (2017) 229-236: feed limits of all polymers fall on one curve; the factor is common practice, no source.',
  formula: `Q > ${largestFactor} median(Q of the others), Q flow limits`,
  example: {
    kind: 'trial',
    copied: true,
    bad: `
id: wren-clover-petg-245-again${ladder(allFlows, { times: 3, apart: 0.002 })}
events:
  - {event: halted, commandedFlow: 84 mm3/s}`,
    good: `
id: wren-clover-petg-245-again${ladder(allFlows, { apart: 0.002 })}`,
  },
  *check(profile, context) {
    const middle = siblingLimit(profile, context);
    const own = middle === null ? null : trialLimit(profile, context);
    if (own === null || middle === null || own.value <= largestFactor * middle) return;
    const times = shownNumber(Number((own.value / middle).toPrecision(2)));
    yield {
      path: ['observations'],
      part: 'key',
      message: `The readings give ${shown(own.value, 'volumeFlow')}, ${times} times what other trials of this family on ${profile.data.nozzle} of ${profile.data.machine} give (${shown(middle, 'volumeFlow')})`,
      found: shown(own.value, 'volumeFlow'),
      allowed: `up to ${shown(largestFactor * middle, 'volumeFlow')}`,
      help: 'Check flows and units, machine and nozzle; if it is right, repeat the ladder and note what was different.',
    };
  },
};
