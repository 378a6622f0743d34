import { widest } from '../../knowledge/families.ts';
import { unfilledSolids } from '../../knowledge/melt-heat.ts';
import { thermalDiffusivity } from '../../physics/melt-zone.ts';
import { shownNumber } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'polymer'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer'],
  severity: 'warning',
  statement:
    'Conductivity, density and specific heat of a family give a diffusivity that unfilled plastics have.',
  rationale:
    'The three are measured separately; together they show a wrong one although each looks right alone.',
  source:
    'Crawford, Plastics Engineering (1998), Table 1.8: 0.6e-7 m2/s to 1.7e-7 m2/s, though not every row there follows from its own figures; polyethylene and poly(phenylene sulfide) up to 2.8e-7 m2/s: Mark (ed.), Physical Properties of Polymers Handbook (from memory).',
  formula:
    'a = k/(rho c_p), k conductivity, rho density, c_p specific heat of the solid; 0.07 mm2/s to 0.28 mm2/s',
  example: alike(
    'polymer',
    { bad: '0.50..0.54 W/m/K', good: '0.19..0.21 W/m/K' },
    (value) => `
specificHeatSolid:
  - {value: 1.1..1.2 J/g/K, basis: published, source: invented-plastics-tables}
thermalConductivity:
  - {value: ${value}, basis: published, source: invented-plastics-tables}`,
  ),
  *check(profile) {
    const [conductivity, density, heat] = (
      ['thermalConductivity', 'density', 'specificHeatSolid'] as const
    ).map((property) => widest([profile.data], property));
    if (!conductivity || !density || !heat) return;
    const low = thermalDiffusivity(conductivity.low, density.high, heat.high);
    const high = thermalDiffusivity(conductivity.high, density.low, heat.low);
    if (high >= unfilledSolids.low && low <= unfilledSolids.high) return;
    const text = `${shownNumber(low)} mm2/s to ${shownNumber(high)} mm2/s`;
    yield {
      path: ['thermalConductivity'],
      part: 'key',
      message: `Conductivity over density and specific heat gives a diffusivity of ${text}, which no unfilled plastic has`,
      found: text,
      allowed: `${unfilledSolids.low} mm2/s to ${unfilledSolids.high} mm2/s`,
      help: 'Check the three against their sources; conductivity in W/m/K is near 0.2, specific heat in J/g/K near 1.5.',
    };
  },
};
