import type { Hit } from '../../registry/hit.ts';
import { stated } from '../../registry/stated.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Share of full speed below which fans stall or do not start (common practice, no source). */
const slowest = 0.05;

export const rule: ProfileRule<'filament' | 'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['filament', 'trial'],
  severity: 'warning',
  statement: 'A fan setting goes up to at least 5 %, or is 0.',
  rationale: 'Slower, a fan stands still and nothing is cooled; the value has lost a digit or is a fraction.',
  source: 'Common practice, no source: part fans start to turn at a tenth or so of full speed.',
  example: stating('filament', 'fan', { bad: '0..2 %', good: '0..20 %' }),
  *check(profile) {
    if (profile.kind === 'filament') {
      for (const { path, value } of stated(profile.data.fan, ['fan'])) {
        if (isTooSlow(value.high)) yield tooSlow(path, value.high, shownRange(value, 'ratio'));
      }
    } else {
      const { fan } = profile.data.conditions;
      if (fan !== undefined && isTooSlow(fan)) yield tooSlow(['conditions', 'fan'], fan, shown(fan, 'ratio'));
    }
  },
};

function isTooSlow(setting: number): boolean {
  return setting > 0 && setting < slowest;
}

function tooSlow(path: Hit['path'], setting: number, found: string): Hit {
  return {
    path,
    part: 'value',
    message: `A fan does not turn at ${shown(setting, 'ratio')} of its full speed`,
    found,
    allowed: `0 %, or up to ${shown(slowest, 'ratio')} and more`,
    help: 'Check the digits: 0.5 is 50 %, not 0.5 %.',
  };
}
