import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'error',
  statement: 'No filament is made of a polymer that must not be extruded.',
  rationale: 'Hot PVC gives off hydrogen chloride, which poisons people and corrodes the machine.',
  source:
    'Polymer profile of the family, feedstock; Hilado, Flammability Handbook for Plastics (1998), pp. 41-44: PVC gives off HCl from 200 Cel.',
  example: {
    kind: 'polymer',
    bad: 'feedstock: false',
    good: 'feedstock: true',
  },
  *check(profile, { registry }) {
    const family = registry.polymer.get(profile.data.polymer)?.data;
    if (family === undefined || family.feedstock) return;
    const emissions = (family.emissions ?? []).join(', ');
    yield {
      path: ['polymer'],
      part: 'value',
      message: `${family.id} must not be used as a feedstock${emissions === '' ? '' : `: it gives off ${emissions}`}`,
      found: family.id,
      allowed: 'a family that may be used as a feedstock',
      source: `polymers/${family.id}.yaml, feedstock and cautions`,
      help: 'Take the filament out of use, and follow its safety data sheet and local codes. Correct the polymer if it is another one.',
    };
  },
};
