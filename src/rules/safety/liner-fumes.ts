import { linerLimits, linerTemperatures } from '../../knowledge/liner-places.ts';
import { isNozzleTemperature } from '../../knowledge/nozzle-temperature-figure.ts';
import { shown } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement: 'A hot end with a polymer liner stays at or below 260 Cel.',
  rationale:
    'A tube of PTFE in the heated path decomposes above it and gives off fluorinated fumes that harm people and kill birds.',
  source:
    'Common practice, no source, from memory: 240 Cel to 260 Cel as the limit of PTFE in a heated filament path.',
  example: alike('machine', { bad: 'polymer', good: 'allMetal' }, (liner) =>
    hotEnd({ temperatureLimit: '290 Cel', liner }),
  ),
  *check(profile, { registry }) {
    for (const { path, value, hotEnd } of linerTemperatures(profile, registry)) {
      if (value <= linerLimits.high || !isNozzleTemperature(value)) continue;
      yield {
        path,
        part: 'value',
        message: `At ${shown(value, 'temperature')} the polymer liner of hot end "${hotEnd.id}" gives off toxic fumes`,
        found: shown(value, 'temperature'),
        allowed: `up to ${shown(linerLimits.high, 'temperature')} with a polymer liner`,
        help: 'Stay below it, or state `liner: allMetal` if no polymer stands in the heated path. Follow the manual of the machine.',
      };
    }
  },
};
