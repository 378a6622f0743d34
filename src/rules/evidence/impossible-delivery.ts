import { impossiblyOff, oddDelivery } from '../../evidence/delivered-share.ts';
import { alike, allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'error',
  statement: `At its lowest steps a ladder delivers what was fed, within ${impossiblyOff * 100} %.`,
  rationale:
    'Where far less or far more comes out than went in, the fed length, the scale, the diameter or the density is wrong, and with it perhaps the flows.',
  source: `Conservation of mass; ${impossiblyOff * 100} % are common practice, no source.`,
  formula: `|m/(rho A l) - 1| <= ${impossiblyOff}, m mass at the two lowest steps, rho density, A cross section, l fed length`,
  example: alike('trial', { bad: '520', good: '400' }, (length) =>
    ladder(allFlows).replaceAll(' 400,', ` ${length},`),
  ),
  *check(profile, context) {
    const odd = oddDelivery(profile, context);
    if (odd?.isImpossible === true) yield odd.hit;
  },
};
