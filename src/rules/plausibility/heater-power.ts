import { flowLimits } from '../../evidence/supported-flow-limits.ts';
import { blamedAtHotEnd } from '../../knowledge/flow-limits.ts';
import { leastHeat } from '../../knowledge/melt-heat.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['machine', 'filament'],
  severity: 'error',
  statement: 'The heater of a hot end has the power to melt the flow that is claimed or measured for it.',
  rationale: 'A flow that needs more heat than the heater gives cools the hot end until the drive slips.',
  source:
    'Steady energy balance, Incropera et al., Fundamentals of Heat and Mass Transfer, section 1.3; specific heats from the polymer profile.',
  formula:
    'P = rho Q c_p (T_nozzle - T_room), rho density, Q flow, c_p specific heat of the melt, T_room 25 Cel; P <= heater power',
  example: alike('machine', { bad: '12 W', good: '50 W' }, (heaterPower) =>
    hotEnd({ heaterPower, meltFlow: ['32 mm3/s', 'polymer: PLA, nozzleTemperature: 230 Cel'] }),
  ),
  *check(profile, context) {
    for (const limit of flowLimits(profile, context)) {
      const power = highestStated(limit.hotEnd.heaterPower);
      const { perVolume, assumptions, source } = leastHeat(limit);
      if (power === null || power <= 0 || perVolume * limit.value <= power) continue;
      yield {
        path: limit.path,
        part: 'value',
        blames: blamedAtHotEnd(limit, 'heaterPower'),
        message: `${shown(limit.value, 'volumeFlow')} needs at least ${shown(perVolume * limit.value, 'power')} to melt, but the heater has ${shown(power, 'power')} (assumed: ${assumptions})`,
        found: shown(limit.value, 'volumeFlow'),
        allowed: `up to ${shown(power / perVolume, 'volumeFlow')}`,
        ...(source !== null && { source }),
        help: `Check the flow and the heater power of hot end "${limit.hotEnd.id}" in machines/${limit.machine.id}.yaml: one of them has a wrong digit or unit.`,
      };
    }
  },
};
