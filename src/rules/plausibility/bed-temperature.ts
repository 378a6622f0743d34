import { aboveSoftening, bedBound } from '../../knowledge/bed-bound.ts';
import { familiesOf } from '../../knowledge/families.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import { fahrenheitSlip } from '../engine/fahrenheit-slip.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'error',
  statement:
    'The bed is not so hot that the part melts: 30 K above softening if amorphous, otherwise the melting point.',
  rationale: 'On a hotter bed the lowest layers melt, and the part comes loose or sinks.',
  source: `Polymer profile of the family, glassTransition and melting; the ${aboveSoftening} K are common practice, no source.`,
  formula: `T_bed <= T_softening + ${aboveSoftening} K (amorphous) or T_bed <= T_m (semi-crystalline)`,
  example: stating('filament', 'bedTemperature', { bad: '70..140 Cel', good: '70..90 Cel' }),
  *check(profile, { registry }) {
    const bound = bedBound(profile.data, familiesOf(profile.data, registry));
    if (bound === null) return;
    for (const { path, value } of stated(profile.data.bedTemperature, ['bedTemperature'])) {
      if (value.high <= bound.value) continue;
      yield {
        path,
        part: 'value',
        message: `A bed at ${shown(value.high, 'temperature')} melts the part: it is above ${bound.text}`,
        found: shown(value.high, 'temperature'),
        allowed: `up to ${shown(bound.value, 'temperature')}`,
        source: bound.source,
        help:
          fahrenheitSlip(value, { low: 20, high: bound.value }) ??
          'Check the digits and the unit against the sheet.',
      };
    }
  },
};
