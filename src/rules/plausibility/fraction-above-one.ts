import { endsOf } from '../../knowledge/figure-outside.ts';
import { isShare } from '../../knowledge/figure-signs.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import { leavesOf } from '../../registry/shape.ts';
import { shown } from '../../units/wording.ts';
import { assuming } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'error',
  statement: 'A fraction of a whole is at most 100 %.',
  rationale: 'A fan cannot run faster than full speed, and a filler cannot be more than the whole filament.',
  source: 'Definition of a share.',
  example: assuming('filament', 'fan', { bad: '30..500 %', good: '30..50 %' }),
  *check(profile) {
    for (const { path, shape, value } of leavesOf('quantity', shapes[profile.kind], profile.data)) {
      const share = Math.max(...endsOf(value));
      if (!isShare(shape.dimension, profile.kind, path) || share <= 1) continue;
      yield {
        path,
        part: 'value',
        message: `${shown(share, 'ratio')} is more than 100 %`,
        found: shown(share, 'ratio'),
        allowed: 'up to 100 %',
        help: 'Check the digits: 0.5 is 50 %, not 0.5 %.',
      };
    }
  },
};
