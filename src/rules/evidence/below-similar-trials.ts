import { siblingLimit } from '../../evidence/sibling-limits.ts';
import { trialLimit } from '../../evidence/trial-limit.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Grades and temperatures of a family differ by less (common practice, no source). */
const largestFactor = 2.5;
/** Of two alone, either may be the one that is off, and the other is found to be above its sibling. */
const fewestSiblings = 2;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement:
    'The limit of a trial is not far below two or more others of the same nozzle and polymer family.',
  rationale:
    'A ladder in cm3/h, or a half-blocked nozzle, gives a limit so low that nobody questions it, and every table gets slow.',
  source:
    'Mackay et al., J. Rheology 61 (2017) 229-236: feed limits of all polymers fall on one curve; the factor is common practice, no source.',
  formula: `${largestFactor} Q < median(Q of the others), Q flow limits`,
  example: {
    kind: 'trial',
    copied: true,
    bad: `
id: wren-daisy-pla-210
filament: oakhollow/daisy-pla
batch: 26-0001
conditions: {nozzleTemperature: 210 Cel}
observations:
  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}
  rows:
    - [4, 400, 1.191]
    - [5, 400, 1.195]
    - [6, 400, 1.192]
    - [7, 400, 1.192]
    - [8, 400, 1.187]
    - [9, 400, 1.172]
    - [10, 400, 1.127]
    - [11, 400, 1.079]
    - [12, 400, 1.014]
events:
  - {event: halted, commandedFlow: 13 mm3/s}`,
    good: `
id: wren-daisy-pla-210
filament: oakhollow/daisy-pla
batch: 26-0001
conditions: {nozzleTemperature: 210 Cel}${ladder(allFlows, { apart: 0.002 })}`,
  },
  *check(profile, context) {
    const middle = siblingLimit(profile, context, fewestSiblings);
    const own = middle === null ? null : trialLimit(profile, context);
    if (middle === null || own === null || largestFactor * own.high >= middle) return;
    const times = shownNumber(Number((middle / own.value).toPrecision(2)));
    yield {
      path: ['observations'],
      part: 'key',
      message: `The readings give ${shown(own.value, 'volumeFlow')}, and other trials of this family on ${profile.data.nozzle} of ${profile.data.machine} give ${times} times as much (${shown(middle, 'volumeFlow')})`,
      found: shown(own.value, 'volumeFlow'),
      allowed: `from ${shown(middle / largestFactor, 'volumeFlow')}`,
      help: 'Check flows and units, machine and nozzle; a half-blocked nozzle looks the same.',
    };
  },
};
