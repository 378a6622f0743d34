import { statementsOf } from '../../registry/statement.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** How reasons begin that say that nothing was calculated. */
const ofAssumptions =
  /^(?:set by feel|(?:a |our )?(?:guess\b|rule of thumb|(?:shop |bench )?habit\b|(?:shop|bench|rough) (?:estimate|guess|setting)))/i;

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement: 'A derived value is calculated, and its reason does not begin with a habit or a guess.',
  rationale:
    'Derived values are trusted as far as what they were calculated from; nobody can follow a habit back.',
  source:
    'Format of the registry: derived values say how they were calculated, assumed ones why they are reasonable.',
  example: {
    kind: 'filament',
    bad: '\nshortestLayerTime:\n  - {value: 8 s, basis: derived, reason: Shop habit}',
    good: '\nshortestLayerTime:\n  - {value: 8 s, basis: assumed, reason: Shop habit}',
  },
  *check(profile) {
    for (const { path, statement } of statementsOf(profile)) {
      const { basis, reason = '' } = statement;
      const [word] = ofAssumptions.exec(reason) ?? [];
      if (basis !== 'derived' || word === undefined) continue;
      yield {
        path: [...path, 'basis'],
        part: 'value',
        message: `The basis is "derived", but the reason begins "${word}", which is no calculation`,
        found: basis,
        allowed: 'assumed, or a reason that says how it was calculated',
        help: 'Write `basis: assumed`, or say in the reason what it was calculated from, and how.',
      };
    }
  },
};
