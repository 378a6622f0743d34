import { linerLimits, linerTemperatures } from '../../knowledge/liner-places.ts';
import { shown } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'warning',
  statement: 'A hot end with a polymer liner stays clear of the limit of the liner, at or below 250 Cel.',
  rationale: 'Temperature sensors in hot ends are off by a few kelvin, and a hot liner ages faster.',
  source:
    'Common practice, no source, from memory: 240 Cel to 260 Cel as the limit of PTFE in a heated filament path.',
  example: alike('machine', { bad: '260 Cel', good: '250 Cel' }, (temperatureLimit) =>
    hotEnd({ temperatureLimit, liner: 'polymer' }),
  ),
  *check(profile, { registry }) {
    for (const { path, value, hotEnd } of linerTemperatures(profile, registry)) {
      if (value <= linerLimits.low || value > linerLimits.high) continue;
      yield {
        path,
        part: 'value',
        message: `At ${shown(value, 'temperature')} the polymer liner of hot end "${hotEnd.id}" is near the point where it gives off fumes`,
        found: shown(value, 'temperature'),
        allowed: `up to ${shown(linerLimits.low, 'temperature')} with a polymer liner`,
        help: 'Stay below it, replace the liner as the manual of the machine says, and ventilate.',
      };
    }
  },
};
