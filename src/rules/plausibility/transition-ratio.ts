import { type Envelope, widest } from '../../knowledge/families.ts';
import { type Stated, stated } from '../../registry/stated.ts';
import { middle } from '../../statistics/middle.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Of symmetrical and unsymmetrical chains of all kinds, with some room. */
const ratios = { low: 0.38, high: 0.88 };
const absoluteZero = -273.15;

export const rule: ProfileRule<'polymer'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer'],
  severity: 'warning',
  statement:
    'The glass transition is about two thirds of the melting point, both in kelvin, as in most polymers.',
  rationale:
    'Both rise with the stiffness of the chain; in a pair that does not fit, one value is wrong, often in °F.',
  source:
    'Van Krevelen & te Nijenhuis, Properties of Polymers, 4th ed. (2009), chapter 6 (Boyer-Beaman rule), from memory: 0.5 to 0.8 for most polymers.',
  formula: `${ratios.low} <= T_g/T_m <= ${ratios.high}, middles of the ranges, in kelvin`,
  example: stating('polymer', 'melting', { bad: '90..110 Cel', good: '160..180 Cel' }),
  *check(profile) {
    const melting = widest([profile.data], 'melting');
    const glass = widest([profile.data], 'glassTransition');
    if (melting === null || glass === null || glass.low > melting.low) return;
    for (const transition of stated(profile.data.glassTransition, ['glassTransition'])) {
      const ratio = kelvin(transition.value) / kelvin(melting);
      if (ratio < ratios.low || ratio > ratios.high) yield misfit(transition, melting, ratio);
    }
  },
};

function misfit({ path, value }: Stated<Range>, melting: Envelope, ratio: number) {
  const bounds = [ratios.low, ratios.high].map((bound) =>
    shown(bound * kelvin(melting) + absoluteZero, 'temperature'),
  );
  return {
    path,
    part: 'value',
    message: `A glass transition of ${shownRange(value, 'temperature')} is ${shownNumber(Number(ratio.toPrecision(2)))} times the melting, ${shownRange(melting, 'temperature')}, in kelvin; polymers have ${ratios.low} to ${ratios.high}`,
    found: shownRange(value, 'temperature'),
    allowed: `its middle from ${bounds.join(' to ')}`,
    help: 'Check both against their sources: °F under Cel, a lost digit, the transition of another polymer.',
  } as const;
}

/** Middle of a range of temperatures, in kelvin. */
function kelvin(range: Range): number {
  return middle(range) - absoluteZero;
}
