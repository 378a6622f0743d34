import { otherFirmware } from '../../evidence/trial-firmware.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A trial was run with the controller software that the machine has now, but for patches.',
  rationale: 'New software moves, heats and feeds in another way: what held before may hold no more.',
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
