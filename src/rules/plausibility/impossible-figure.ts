import { figuresOutside } from '../../knowledge/figure-outside.ts';
import { figureHit } from '../engine/figure-hit.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  severity: 'error',
  statement: 'No figure lies outside of what such a thing can have at all.',
  rationale:
    'A figure that is off by a power of ten or in another unit spoils every table that is derived from it.',
  source: 'Common practice, no source; single bands name theirs.',
  example: {
    kind: 'machine',
    bad: 'spool: {mass: 1000 kg}',
    good: 'spool: {mass: 1 kg}',
  },
  *check(profile) {
    for (const outside of figuresOutside(profile)) {
      if (outside.impossible)
        yield figureHit(outside, 'cannot be: it lies far outside of what exists', outside.band.possible.text);
    }
  },
};
