import { figuresOutside } from '../../knowledge/figure-outside.ts';
import { figureHit } from '../engine/figure-hit.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  severity: 'warning',
  statement: 'A figure lies in the band that machines, filaments, polymers and house rules have.',
  rationale: 'Most figures outside of their band are slips of a digit or a unit; the rest deserve a reason.',
  source: 'Common practice, no source; single bands name theirs.',
  example: {
    kind: 'filament',
    bad: `
shortestLayerTime:
  - {value: 8 min, basis: assumed, reason: Bench habit}`,
    good: `
shortestLayerTime:
  - {value: 8 s, basis: assumed, reason: Bench habit}`,
  },
  *check(profile) {
    for (const outside of figuresOutside(profile)) {
      if (!outside.impossible) yield figureHit(outside, 'is unusual', outside.band.usual.text);
    }
  },
};
