import { otherFirmware } from '../../evidence/trial-firmware.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A trial was run with the present controller software of the machine, apart from patches.',
  rationale: 'New software may move, heat and feed differently, so an old limit may no longer be right.',
  source: 'Semantic Versioning 2.0.0, clauses 6 to 8: only a patch leaves the behaviour as it was.',
  example: {
    kind: 'trial',
    bad: 'firmware: 1.2.0',
    good: 'firmware: 1.3.4',
  },
  *check(profile, { registry }) {
    const hit = otherFirmware(profile, registry);
    if (hit !== null) yield hit;
  },
};
