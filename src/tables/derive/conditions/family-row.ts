import { familiesOf } from '../../../knowledge/families.ts';
import type { Pairing } from '../../../knowledge/pairing.ts';
import type { Registry } from '../../../registry/registry.ts';
import { clean } from '../../../units/round-to-step.ts';
import { sourcedStatement } from '../sourced-value.ts';
import { type BareCondition, isNotStated } from './condition-row.ts';

/**
 * A setting that the filament does not state, with the first published figure of its families beside it. `perUnit` is
 * how many canonical units the unit of the row has.
 */
export function familyRow(
  registry: Registry,
  { filament }: Pairing,
  name: 'dryingTemperature' | 'dryingTime',
  unit: 'Cel' | 'h',
  perUnit: number,
): BareCondition {
  const figures = familiesOf(filament.data, registry).flatMap((family) => {
    const profile = registry.polymer.get(family.id);
    const [published] = family[name] ?? [];
    return profile === undefined || published === undefined ? [] : [{ profile, published }];
  });
  // Of a blend the part that bears the least heat decides.
  const [first] = figures.sort((a, b) => a.published.value.high - b.published.value.high);
  if (first === undefined) return isNotStated(name, unit);
  const { low, high } = first.published.value;
  const figure = { family: first.profile.id, low: clean(low / perUnit), high: clean(high / perUnit) };
  return isNotStated(name, unit, figure, [sourcedStatement(first.profile, first.published)]);
}
