import { isFilamentDiameter, isNearNominal, nominalDiameters } from '../../knowledge/filament-diameters.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Path } from '../../registry/shape.ts';
import type { Millimetres } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'profile',
  severity: 'warning',
  statement: 'Filaments and hot ends have a nominal diameter of 1.75 mm, 2.85 mm or 3.00 mm.',
  rationale: 'A diameter in between is usually a reading at one place; the nominal one belongs here.',
  source: 'Common practice, no source: the nominal diameters that filament is sold in.',
  example: {
    kind: 'filament',
    bad: 'diameter: 1.57 mm',
    good: 'diameter: 1.75 mm',
  },
  *check(profile) {
    for (const { path, diameter } of diametersOf(profile)) {
      if (isNearNominal(diameter) || !isFilamentDiameter(diameter)) continue;
      yield {
        path,
        part: 'value',
        message: `${shown(diameter, 'length')} is not a diameter that filament is sold in`,
        found: shown(diameter, 'length'),
        allowed: nominalDiameters.map((nominal) => shown(nominal, 'length')).join(', '),
        help: 'Write the nominal diameter; readings belong into a trial.',
      };
    }
  },
};

function diametersOf(profile: AnyProfile): { path: Path; diameter: Millimetres }[] {
  if (profile.kind === 'filament') return [{ path: ['diameter'], diameter: profile.data.diameter }];
  if (profile.kind !== 'machine') return [];
  return profile.data.hotEnds.map(({ filamentDiameter }, index) => ({
    path: ['hotEnds', index, 'filamentDiameter'],
    diameter: filamentDiameter,
  }));
}
