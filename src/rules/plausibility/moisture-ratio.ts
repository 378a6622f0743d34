import { widest } from '../../knowledge/families.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Least part of the saturation that a polymer takes up from air of 50 % relative humidity. */
const leastShare = 0.1;
const roundOff = 1e-9;

export const rule: ProfileRule<'polymer'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer'],
  severity: 'warning',
  statement: 'In air of 50 % humidity a polymer takes up at least a tenth of its saturation.',
  rationale: 'Both figures tell how urgent drying is; a lost digit makes a polymer look dry that is not.',
  source:
    'Crank & Park (ed.), Diffusion in Polymers (1968), from memory: sorption of water rises about in proportion to the humidity, in polar polymers faster; the tenth is common practice, no source.',
  formula: `w_equilibrium >= ${leastShare} w_saturated, upper ends`,
  example: alike(
    'polymer',
    { bad: '0.01..0.02 %', good: '0.1..0.2 %' },
    (value) => `
moistureEquilibrium:
  - {value: ${value}, basis: published, source: invented-plastics-tables}
moistureSaturated:
  - {value: 0.4..0.6 %, basis: published, source: invented-plastics-tables}`,
  ),
  *check(profile) {
    const equilibrium = widest([profile.data], 'moistureEquilibrium');
    const saturated = widest([profile.data], 'moistureSaturated');
    if (equilibrium === null || saturated === null || equilibrium.high <= 0) return;
    if (equilibrium.high >= leastShare * saturated.high * (1 - roundOff)) return;
    yield {
      path: ['moistureEquilibrium', 0, 'value'],
      part: 'value',
      message: `${shownRange(equilibrium, 'ratio')} in room air is less than a tenth of ${shownRange(saturated, 'ratio')}, the saturation`,
      found: shownRange(equilibrium, 'ratio'),
      allowed: `from ${shown(leastShare * saturated.high, 'ratio')}`,
      source: equilibrium.source,
      help: 'Check the decimal point of both against their sources.',
    };
  },
};
