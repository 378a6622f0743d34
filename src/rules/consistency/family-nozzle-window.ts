import { gradeAllowance, impossibleEnd, nozzleEnvelope } from '../../knowledge/nozzle-envelope.ts';
import { stated } from '../../registry/stated.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'polymer'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer'],
  severity: 'error',
  statement: 'At the usual nozzle temperatures of a family its polymer flows and does not decompose.',
  rationale: 'Every filament of the family is checked against this window.',
  source:
    'Melting and glass transition in the same profile; 80 K above the glass transition is common practice, no source.',
  formula: 'T_m <= T_nozzle (semi-crystalline) or T_g + 80 K <= T_nozzle (amorphous); T_nozzle <= T_limit',
  example: stating('polymer', 'nozzleTemperature', { bad: '142..260 Cel', good: '220..260 Cel' }),
  *check(profile) {
    const envelope = nozzleEnvelope([profile.data]);
    for (const { path, value } of stated(profile.data.nozzleTemperature, ['nozzleTemperature'])) {
      const end = impossibleEnd(value, envelope);
      if (end === null) continue;
      yield {
        path,
        part: 'value',
        message: `${shown(end.value, 'temperature')} is ${end.text} (allowance ${gradeAllowance} K)`,
        found: shownRange(value, 'temperature'),
        allowed: `${end.value === value.low ? 'from' : 'up to'} ${shown(end.bound.value, 'temperature')}`,
        source: end.bound.source,
        help: 'Check the window, the limit and the transitions against their sources.',
      };
    }
  },
};
