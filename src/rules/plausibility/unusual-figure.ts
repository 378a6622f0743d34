import { figuresOutside } from '../../knowledge/figure-outside.ts';
import { assuming } from '../engine/examples.ts';
import { figureHit } from '../engine/figure-hit.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement: 'A figure is in the usual range for machines, filaments, polymers and policies.',
  rationale: 'Most figures outside that range have a wrong digit or unit; the others need a reason.',
  source: 'Common practice, no source; single bands name theirs.',
  example: assuming('filament', 'shortestLayerTime', { bad: '8 min', good: '8 s' }),
  *check(profile) {
    for (const outside of figuresOutside(profile)) {
      if (!outside.impossible) yield figureHit(outside, 'is unusual', outside.band.usual.text);
    }
  },
};
