import { densityEnvelope, densityOff, impossiblyOff } from '../../knowledge/density-envelope.ts';
import { stated } from '../../registry/stated.ts';
import { densityHit } from '../engine/density-hit.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'error',
  statement: 'The density of a filament is one that its polymer and fillers can have.',
  rationale: 'Flow ladders weigh the plastic; a wrong density turns every mass into a wrong volume.',
  source:
    'Polymer profile of the family; fillers by the mixing rule, Osswald & Menges, Materials Science of Polymers for Engineers (from memory).',
  formula:
    '1/rho = sum of w_i/rho_i, w mass fractions, rho densities of matrix and fillers; off by more than 20 %',
  example: stating('filament', 'density', { bad: '0.89 g/cm3', good: '1.27 g/cm3' }),
  *check(profile, { registry }) {
    const envelope = densityEnvelope(profile.data, registry);
    if (envelope === null) return;
    for (const { path, value } of stated(profile.data.density, ['density'])) {
      const off = densityOff(value, envelope);
      if (Math.abs(off) > impossiblyOff) yield densityHit(path, value, off, profile.data, envelope);
    }
  },
};
