import { emissionStatementLevels, exposureActionLevels } from '../../physics/sound-limits.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'note',
  statement: 'The instructions of a machine above 70 dB(A) state its sound level.',
  rationale: 'Above this level the maker has to state it; if it is missing, ask for it.',
  source: 'Directive 2006/42/EC, annex I, 1.7.4.2(u): emission sound pressure level above 70 dB(A).',
  example: stating('machine', 'soundLevel', { bad: "'73 dB[SPL]{A}'", good: "'69 dB[SPL]{A}'" }),
  *check(profile) {
    for (const { path, value } of stated(profile.data.soundLevel, ['soundLevel'])) {
      if (value <= emissionStatementLevels.pressureStatement || value >= exposureActionLevels.lowerAction)
        continue;
      yield {
        path,
        part: 'value',
        message: `${shown(value, 'soundLevel')} is a level that the instructions of the machine must state`,
        found: shown(value, 'soundLevel'),
        allowed: `up to ${emissionStatementLevels.pressureStatement} dB(A) without a statement`,
        help: 'Compare it with the manual, follow local codes, and place the machine away from where people work all day.',
      };
    }
  },
};
