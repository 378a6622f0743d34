import { familiesOf } from '../../knowledge/families.ts';
import { filamentsOnMachine } from '../../knowledge/materials-on-machine.ts';
import { offsetText, partOffset } from '../../knowledge/part-offset.ts';
import { softeningOf } from '../../knowledge/softening.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine'],
  severity: 'error',
  statement:
    'The dryer of a machine can be set below the softening temperature of every filament that was run on it.',
  rationale: 'A dryer fixed at 65 Cel fuses a spool that softens at 55 Cel into a block.',
  source: 'Softening of the filament, else glass transition or melting of its family in the polymer profile.',
  example: {
    kind: 'machine',
    bad: 'dryer: {setting: fixed, temperature: 65 Cel}',
    good: 'dryer: {setting: fixed, temperature: 50 Cel}',
  },
  *check(profile, { registry }) {
    const coldest = coldestSetting(profile.data);
    if (coldest === null) return;
    const offset = partOffset(profile.data, 'dryer', {});
    const fused = fusedAt(coldest.value + (offset?.warmest ?? 0), profile.data, registry);
    if (fused.length === 0) return;
    const named = fused.map(({ id, value }) => `${id} softens at ${shown(value, 'temperature')}`);
    yield {
      path: ['dryer', coldest.key],
      part: 'value',
      message: `The dryer runs at ${shown(coldest.value, 'temperature')} or hotter${offset === null ? '' : ` (${offsetText(offset)})`} and fuses spools that were run on this machine: ${named.join('; ')}`,
      found: shown(coldest.value, 'temperature'),
      allowed: `below ${shown(Math.min(...fused.map(({ value }) => value)), 'temperature')}`,
      help: 'Note on the machine which spools must not go into its dryer, or correct the temperature; then acknowledge the finding. Dryers can ignite: follow the manual, and do not leave one alone.',
    };
  },
};

function coldestSetting({ dryer }: Machine): { value: DegreesCelsius; key: 'temperature' | 'range' } | null {
  if (dryer?.setting === 'fixed' && dryer.temperature !== undefined)
    return { value: dryer.temperature, key: 'temperature' };
  if (dryer?.setting === 'adjustable' && dryer.range !== undefined)
    return { value: dryer.range.low, key: 'range' };
  return null;
}

/** The filaments tried on a machine that soften at a temperature, and where they do. */
function fusedAt(
  temperature: DegreesCelsius,
  machine: Machine,
  registry: Registry,
): { readonly id: string; readonly value: DegreesCelsius }[] {
  return filamentsOnMachine(machine, registry).flatMap((filament) => {
    const softening = softeningOf(filament, familiesOf(filament, registry));
    return softening === null || temperature < softening.value
      ? []
      : [{ id: filament.id, value: softening.value }];
  });
}
