import { familiesOf } from '../../knowledge/families.ts';
import { softeningOf, softeningUncertainty } from '../../knowledge/softening.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'A spool is dried clearly below its softening, by more than the softening is uncertain.',
  rationale:
    'Sheets often give one figure for both; batches and dryers differ by a few kelvin, and a spool that is a little too hot for hours fuses.',
  source: `Glass transition or melting of the family in its polymer profile; ${softeningUncertainty} K for its uncertainty are common practice, no source.`,
  formula: `T_dry <= T_soft - ${softeningUncertainty} K`,
  example: stating('filament', 'dryingTemperature', { bad: '86 Cel', good: '65 Cel' }),
  *check(profile, { registry }) {
    const softening = softeningOf(profile.data, familiesOf(profile.data, registry));
    if (softening === null) return;
    const bound = softening.value - softeningUncertainty;
    for (const { path, value } of stated(profile.data.dryingTemperature, ['dryingTemperature'])) {
      // Hotter still is an error of its own.
      if (value <= bound || value > softening.value + softeningUncertainty) continue;
      yield {
        path,
        part: 'value',
        message: `Drying at ${shown(value, 'temperature')} leaves no margin to ${softening.text}, which is known to about ${shown(softeningUncertainty, 'temperatureDifference')}`,
        found: shown(value, 'temperature'),
        allowed: `up to ${shown(bound, 'temperature')}`,
        source: softening.source,
        help: 'Dry a few kelvin colder and longer, and check the dryer with a thermometer. Dryers can ignite: follow the manual of the dryer.',
      };
    }
  },
};
