import type { CubicMillimetres, Grams } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Grams per cubic centimetre of the outline of a full spool: thin reels hold little, and plastic fills no more (common practice, no source). */
const packed = { least: 0.1, most: 1.3 };

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'The largest spool that a holder takes holds about the mass that is stated for it.',
  rationale: 'Mass, diameter and width contradict each other where one of them has a wrong digit or unit.',
  source: `Volume of a cylinder; ${packed.least} to ${packed.most} g/cm3 of the outline are common practice, no source: unfilled plastics have about 0.9 to 1.4 g/cm3, and hub and flanges take room.`,
  formula: `${packed.least} g/cm3 <= m/(pi d^2 w/4) <= ${packed.most} g/cm3, m mass, d diameter, w width`,
  example: alike(
    'machine',
    { bad: '12 kg', good: '1.2 kg' },
    (mass) => `
spool: {mass: ${mass}, diameter: 205 mm, width: 72 mm}`,
  ),
  *check({ data: { spool } }) {
    if (spool?.diameter === undefined || spool.width === undefined) return;
    const { mass, diameter, width } = spool;
    const outline: CubicMillimetres = (Math.PI / 4) * diameter ** 2 * width;
    if (!(mass > 0 && outline > 0)) return;
    const [least, most] = [packed.least, packed.most].map((density): Grams => (density * outline) / 1000);
    if (least === undefined || most === undefined || (mass >= least && mass <= most)) return;
    yield {
      path: ['spool', 'mass'],
      part: 'value',
      message: `A spool of ${shown(diameter, 'length')} by ${shown(width, 'length')} does not hold ${shown(mass, 'mass')}: that is ${shown(mass / outline, 'density')} of its outline`,
      found: shown(mass, 'mass'),
      allowed: `${shown(Number(least.toPrecision(2)), 'mass')} to ${shown(Number(most.toPrecision(2)), 'mass')}`,
      help: 'Check the digits and units of mass, diameter and width.',
    };
  },
};
