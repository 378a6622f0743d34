import { explainedOff, oddDelivery } from '../../evidence/delivered-share.ts';
import { alike, allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement: `At its lowest steps a ladder delivers what was fed, within ${explainedOff * 100} %, or what a survey of the strand or a stated tolerance explains.`,
  rationale:
    'Errors of diameter and density cancel in the limit, but a wrong fed length or a scale that was not zeroed may hide behind them.',
  source: `Conservation of mass; ${explainedOff * 100} % are 0.05 mm on 1.75 mm and 2 % of density together with the scale (common practice, no source).`,
  formula: `|m/(rho A l) - 1| <= ${explainedOff}, m mass at the two lowest steps, rho density, A cross section, l fed length`,
  example: alike('trial', { bad: '450', good: '410' }, (length) =>
    ladder(allFlows).replaceAll(' 400,', ` ${length},`),
  ),
  *check(profile, context) {
    const odd = oddDelivery(profile, context);
    if (odd?.isImpossible === false) yield odd.hit;
  },
};
