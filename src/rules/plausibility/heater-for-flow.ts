import { flowLimits } from '../../evidence/supported-flow-limits.ts';
import type { FlowLimit } from '../../knowledge/flow-limits.ts';
import { leastHeat } from '../../knowledge/melt-heat.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Hit } from '../../registry/hit.ts';
import { highestStated, stated } from '../../registry/stated.ts';
import type { Watts } from '../../units/canonical.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Heaters are built for fast heating, losses and hot nozzles: so much besides, W, and so many times the heat that melts. */
const generous = { besides: 150, times: 10 };

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'The heater of a hot end is not many times stronger than its largest stated flow needs.',
  rationale:
    'A heater far above its task has a digit too many, or belongs to another hot end; by its power people choose wiring and flows.',
  source: `Steady energy balance, Incropera et al., Fundamentals of Heat and Mass Transfer, section 1.3; ${generous.besides} W and ${generous.times} times: common practice, no source.`,
  formula: `P <= ${generous.besides} W + ${generous.times} rho Q c_p (T_nozzle - T_room), rho density, Q largest flow, c_p specific heat of the melt, T_room 25 Cel`,
  example: alike('machine', { bad: '450 W', good: '50 W' }, (heaterPower) =>
    hotEnd({
      heaterPower,
      temperatureLimit: '290 Cel',
      liner: 'allMetal',
      meltFlow: ['32 mm3/s', 'polymer: PLA, nozzleTemperature: 230 Cel'],
    }),
  ),
  *check(profile, context) {
    const ends = groupedBy(flowLimits(profile, context), ({ hotEnd: { id } }) => id);
    for (const [index, { id }] of profile.data.hotEnds.entries()) {
      const limits = ends.get(id) ?? [];
      const hit = limits.length === 0 ? null : heaterHit(limits, index);
      if (hit !== null) yield hit;
    }
  },
};

function heaterHit(limits: readonly FlowLimit[], index: number): Hit | null {
  const power = highestStated(limits[0]?.hotEnd.heaterPower);
  const place = stated(limits[0]?.hotEnd.heaterPower, ['hotEnds', index, 'heaterPower']).find(
    ({ value }) => value === power,
  );
  const [most] = limits
    .map((limit) => ({ limit, melt: limit.value * leastHeat(limit).perVolume }))
    .toSorted((a, b) => b.melt - a.melt);
  if (power === null || place === undefined || most === undefined || most.melt <= 0) return null;
  const highest: Watts = generous.besides + generous.times * most.melt;
  if (power <= highest) return null;
  return {
    path: place.path,
    part: 'value',
    message: `A heater of ${shown(power, 'power')} is ${shownNumber(Math.round(power / most.melt))} times what its largest stated flow needs: ${shown(most.limit.value, 'volumeFlow')} needs about ${shown(most.melt, 'power')} to melt`,
    found: shown(power, 'power'),
    allowed: `up to ${shown(highest, 'power')}`,
    help: 'Compare the power and the flow with the sheet: one of them has a wrong digit or unit. If the heater is that strong, acknowledge the finding.',
  };
}
