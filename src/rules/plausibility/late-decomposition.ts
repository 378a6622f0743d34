import { nozzleLimit } from '../../knowledge/families.ts';
import { stated } from '../../registry/stated.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In K. Of the families in use, none is processed further below what thermogravimetry gives. */
const furthest = 200;

export const rule: ProfileRule<'polymer'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer'],
  severity: 'warning',
  statement: 'A family decomposes at most about 200 K above its nozzle temperature limit.',
  rationale:
    'A decomposition temperature in °F makes the polymer look heat-resistant and hides that it burns.',
  source: `Common practice, no source: onset of loss of mass and limit of processing lie 0 K to 150 K apart; ${furthest} K with some room.`,
  formula: `T_decomposition - T_limit <= ${furthest} K, lower end of the decomposition`,
  example: stating('polymer', 'decomposition', { bad: '541..583 Cel', good: '400..420 Cel' }),
  *check(profile) {
    const limit = nozzleLimit([profile.data]);
    if (limit === null) return;
    for (const { path, value } of stated(profile.data.decomposition, ['decomposition'])) {
      if (value.low - limit.value <= furthest) continue;
      yield {
        path,
        part: 'value',
        message: `${shownRange(value, 'temperature')} lies more than ${furthest} K above the nozzle temperature limit of the family, ${shown(limit.value, 'temperature')}`,
        found: shownRange(value, 'temperature'),
        allowed: `up to ${shown(limit.value + furthest, 'temperature')}`,
        help: 'Check both against their sources, and whether one of them is in °F.',
      };
    }
  },
};
