import {
  blendAllowance,
  densityEnvelope,
  densityOff,
  impossiblyOff,
  pigmentAllowance,
  voidAllowance,
} from '../../knowledge/density-envelope.ts';
import { stated } from '../../registry/stated.ts';
import { densityHit } from '../engine/density-hit.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'The density of a filament is near what its polymer and fillers give.',
  rationale:
    'A density that does not fit means a filler that is not stated, another polymer or a mistyped digit.',
  source: `Polymer profile of the family; fillers by the mixing rule, Osswald & Menges, Materials Science of Polymers for Engineers (from memory). Allowance ${100 * pigmentAllowance} %, for blends ${100 * blendAllowance} %, for voids in filled filaments ${100 * voidAllowance} % below: common practice, no source.`,
  formula: '1/rho = sum of w_i/rho_i, w mass fractions, rho densities of matrix and fillers',
  example: stating('filament', 'density', { bad: '1.36 g/cm3', good: '1.32 g/cm3' }),
  *check(profile, { registry }) {
    const envelope = densityEnvelope(profile.data, registry);
    if (envelope === null) return;
    for (const { path, value } of stated(profile.data.density, ['density'])) {
      const off = densityOff(value, envelope);
      const allowed = off < 0 ? envelope.slack.below : envelope.slack.above;
      if (Math.abs(off) > allowed && Math.abs(off) <= impossiblyOff)
        yield densityHit(path, value, off, profile.data, envelope);
    }
  },
};
