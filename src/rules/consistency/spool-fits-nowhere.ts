import type { Registry } from '../../registry/registry.ts';
import { oncePerRegistry } from '../../registry/registry.ts';
import type { Grams, Millimetres } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Stands beside the machine take more than its holder: spools of 5 kg beside a holder for 1 kg. */
const factor = 5;
/** In mm: two filaments of one nominal diameter are nearer. */
const sameFilament = 0.2;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['filament'],
  severity: 'warning',
  statement:
    'At least one machine of the registry takes a spool a fifth as heavy as that of the filament, or heavier.',
  rationale:
    'A spool that fits nowhere usually has a misplaced decimal point, and spool life is calculated from it.',
  source: `Machine profiles of the registry, spool; a factor of ${factor} for stands beside the machine is common practice, no source.`,
  formula: `m_spool <= ${factor} max(m_holder) over the machines that take the filament`,
  example: alike(
    'filament',
    { bad: '7.5 kg', good: '750 g' },
    (value) => `
id: oakhollow/thistle-petg
name: Thistle PETG
spoolMass: ${value}`,
    { copied: true },
  ),
  *check(profile, { registry }) {
    if (profile.data.spoolMass === undefined) return;
    const mass = profile.data.spoolMass;
    const largest = largestHolder(profile.data.diameter, registry);
    if (largest === null || mass <= factor * largest) return;
    yield {
      path: ['spoolMass'],
      part: 'value',
      message: `A spool of ${shown(mass, 'mass')} fits no machine that takes this filament: the largest holder takes ${shown(largest, 'mass')}`,
      found: shown(mass, 'mass'),
      allowed: `up to ${shown(factor * largest, 'mass')}`,
      help: 'Check the digits and the unit; if it runs from a stand beside the machine, acknowledge the finding.',
    };
  },
};

/** The heaviest spool that a machine for the filament takes; null where none of them says. */
function largestHolder(diameter: Millimetres, registry: Registry): Grams | null {
  const masses = [...largestHolders(registry)].flatMap(([taken, mass]) =>
    Math.abs(taken - diameter) <= sameFilament ? [mass] : [],
  );
  return masses.length === 0 ? null : Math.max(...masses);
}

/** The heaviest spool that the holders of a registry take for each diameter of filament. */
const largestHolders = oncePerRegistry((registry): ReadonlyMap<Millimetres, Grams> => {
  const largest = new Map<Millimetres, Grams>();
  for (const { data } of registry.machine.values()) {
    for (const { filamentDiameter } of data.hotEnds) {
      const mass = data.spool?.mass ?? 0;
      if (mass > (largest.get(filamentDiameter) ?? 0)) largest.set(filamentDiameter, mass);
    }
  }
  return largest;
});
