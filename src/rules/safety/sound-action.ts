import { exposureActionLevels } from '../../physics/sound-limits.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'A machine stays below the sound level at which employers have to act, 80 dB(A).',
  rationale: 'People who work beside it all day must be told of the risk and offered hearing protection.',
  source: 'Directive 2003/10/EC, article 3(1)(c): lower exposure action value, L_EX,8h = 80 dB(A).',
  example: stating('machine', 'soundLevel', { bad: "'82 dB[SPL]{A}'", good: "'52 dB[SPL]{A}'" }),
  *check(profile) {
    for (const { path, value } of stated(profile.data.soundLevel, ['soundLevel'])) {
      if (value < exposureActionLevels.lowerAction) continue;
      yield {
        path,
        part: 'value',
        message: `${shown(value, 'soundLevel')} at 1 m reaches the level at which law asks for action if somebody stays beside it for eight hours`,
        found: shown(value, 'soundLevel'),
        allowed: `below ${exposureActionLevels.lowerAction} dB(A) over eight hours`,
        help: 'Check the reading; if it is right, enclose the machine as its manual allows, keep your distance, and ask qualified people: local codes say from which level hearing must be protected.',
      };
    }
  },
};
