import { widest } from '../../knowledge/families.ts';
import { stated } from '../../registry/stated.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In K. */
const nearest = 60;

export const rule: ProfileRule<'polymer'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer'],
  severity: 'warning',
  statement: 'A family is dried at least 60 K below the temperatures at which it is extruded.',
  rationale:
    'Hotter, the turns stick to each other and the plastic ages; a dryer set by such a number can start a fire.',
  source: `Common practice, no source: moulders' tables dry every family 70 K and more below its melt; ${nearest} K with some room.`,
  formula: `T_dry <= T_nozzle - ${nearest} K, upper end of drying, lower end of the nozzle window`,
  example: alike(
    'polymer',
    { bad: '130..165 Cel', good: '80..110 Cel' },
    (value) => `
structure: semiCrystalline
melting:
  - {value: 190..210 Cel, basis: published, source: invented-plastics-tables}
dryingTemperature:
  - {value: ${value}, basis: published, source: invented-plastics-tables}`,
  ),
  *check(profile) {
    const families = [profile.data];
    const window = widest(families, 'nozzleTemperature');
    // Drying above the softening is an error of its own rule.
    const soft = widest(families, profile.data.structure === 'amorphous' ? 'glassTransition' : 'melting');
    if (window === null) return;
    for (const { path, value } of stated(profile.data.dryingTemperature, ['dryingTemperature'])) {
      if (value.high <= window.low - nearest || (soft !== null && value.high > soft.high)) continue;
      yield {
        path,
        part: 'value',
        message: `Drying at ${shownRange(value, 'temperature')} is too close to the nozzle temperatures, ${shownRange(window, 'temperature')}`,
        found: shownRange(value, 'temperature'),
        allowed: `up to ${shown(window.low - nearest, 'temperature')}`,
        source: window.source,
        help: 'Check both against their sources, and whether one of them is in °F. Never set a dryer by a number in doubt: follow its manual.',
      };
    }
  },
};
