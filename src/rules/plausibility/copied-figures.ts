import { familiesOf } from '../../knowledge/families.ts';
import type { Registry } from '../../registry/registry.ts';
import type { ProfileRule } from '../engine/rule.ts';
import { type Shared, sharedWithOtherPolymer } from '../engine/shared-figures.ts';

/** Weight of shared figures that needs no misfit, and of both together where they do not fit the family either. */
const bounds = { alone: 5, withMisfit: 3.5, leastMisfit: 1 };

/** Figures of any kind; fewer tell something only where a density is among them. */
const leastKeys = 3;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'A filament does not have the figures of a filament of another polymer.',
  rationale:
    'Products have figures of their own; many equal ones stand where a block was copied and its values were never replaced.',
  source:
    'Common practice, no source: figures of different plastics agree one by one, and seldom all together.',
  formula: `Of ${leastKeys} equal figures or more, or of a density and another one: W >= ${bounds.alone}, or M >= ${bounds.leastMisfit} and W + M >= ${bounds.withMisfit}: W sum of weights of equal figures (1 for nozzle, bed, softening, drying temperature, density; 0.5 for chamber, fan, times), M how far they lie outside of the family, in allowances for grades`,
  example: {
    kind: 'filament',
    bad: `
density:
  - {value: 1.24 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}
softening:
  - {value: 58 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
bedTemperature:
  - {value: 50..60 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    good: `
density:
  - {value: 1.24 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}
bedTemperature:
  - {value: 50..60 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  },
  *check(profile, { registry }) {
    const [closest] = sharedWithOtherPolymer(profile, registry)
      .filter((shared) => isCopied(shared, registry))
      .sort((one, other) => other.weight - one.weight);
    if (closest === undefined) return;
    const { other, keys } = closest;
    yield {
      path: [keys[0]?.key ?? 'polymer'],
      part: 'key',
      message: `${keys.length} figures are those of ${other.data.name} by ${other.data.maker} (${other.id}), which is ${other.data.polymer} and not ${profile.data.polymer}: ${keys.map(({ words }) => words).join(', ')}`,
      found: `figures of ${other.id}`,
      allowed: `figures of ${profile.data.name}`,
      help: `Compare each of them with the sheet of ${profile.data.name}; if both sheets really say the same, acknowledge the finding.`,
    };
  },
};

function isCopied({ weight, keys, misfit, misfitOfOther, other }: Shared, registry: Registry): boolean {
  // Temperatures are round, so that two of them are the same by chance.
  if (keys.length < leastKeys && keys.every(({ key }) => key !== 'density')) return false;
  // Where the figures fit this family better, the other profile is the copy.
  if (misfitOfOther > misfit || familiesOf(other.data, registry).length === 0) return false;
  return weight >= bounds.alone || (misfit >= bounds.leastMisfit && weight + misfit >= bounds.withMisfit);
}
