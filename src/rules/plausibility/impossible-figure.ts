import { figuresOutside } from '../../knowledge/figure-outside.ts';
import { figureHit } from '../engine/figure-hit.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'error',
  statement: 'No figure is physically impossible for such a product.',
  rationale: 'A figure with a misplaced decimal point or a wrong unit spoils every table made from it.',
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
