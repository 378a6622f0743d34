import { strandStrength } from '../../knowledge/traction.ts';
import { filamentArea } from '../../physics/filament-geometry.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { stated } from '../../registry/stated.ts';
import type { Megapascals } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'A drive pushes no harder than the strand of the strongest family of the registry bears.',
  rationale:
    'Beyond it the strand yields before the force reaches the melt: such a force was calculated from a motor, and no flow can be expected of it.',
  source:
    'Definition of stress; compressive yield from the polymer profiles. Published pressures before the nozzle are of the order of 30 MPa: Mackay, J. Rheology 62 (2018) 1549-1561 (abstract).',
  formula:
    'F/(pi d^2/4) <= max(s) over the families, F drive force, d filament diameter, s compressive yield',
  example: alike('machine', { bad: '600 N', good: '90 N' }, (driveForce) => hotEnd({ driveForce })),
  *check({ data }, { registry }) {
    const strongest = strongestFamily(registry);
    if (strongest === null) return;
    for (const [index, { filamentDiameter, driveForce }] of data.hotEnds.entries()) {
      // A strand without a cross-section is another rule's to find.
      if (filamentDiameter <= 0) continue;
      const most = strongest.strength * filamentArea(filamentDiameter);
      for (const { path, value } of stated(driveForce, ['hotEnds', index, 'driveForce'])) {
        if (value <= most) continue;
        const stress = shown(value / filamentArea(filamentDiameter), 'pressure');
        yield {
          path,
          part: 'value',
          message: `${shown(value, 'force')} puts ${stress} on a strand of ${shown(filamentDiameter, 'length')}, but no family bears more than the ${shown(strongest.strength, 'pressure')} of ${strongest.id}`,
          found: shown(value, 'force'),
          allowed: `up to ${shown(most, 'force')}`,
          help: 'Check the digits and the unit; a force that a motor could give counts only as far as the strand bears it.',
        };
      }
    }
  },
};

interface StrongFamily {
  readonly id: string;
  readonly strength: Megapascals;
}

/** The family whose strand bears most; null where no compressive yield is stated. */
const strongestFamily = oncePerRegistry((registry: Registry): StrongFamily | null => {
  const known = [...registry.polymer.values()].flatMap(({ id, data }) => {
    const strength = strandStrength([data]);
    return strength === null ? [] : [{ id, strength }];
  });
  return known.toSorted((a, b) => b.strength - a.strength)[0] ?? null;
});
