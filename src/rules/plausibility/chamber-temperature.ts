import { familiesOf } from '../../knowledge/families.ts';
import { softeningOf } from '../../knowledge/softening.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'error',
  statement: 'The chamber stays below the temperature at which the filament softens.',
  rationale: 'In a hotter chamber the part sags, and the filament buckles in the drive and jams the hot end.',
  source:
    'Polymer profile of the family, glassTransition and melting; softening of the filament as its sheet states it.',
  example: stating('filament', 'chamberTemperature', { bad: '20..95 Cel', good: '20..50 Cel' }),
  *check(profile, { registry }) {
    const softening = softeningOf(profile.data, familiesOf(profile.data, registry));
    if (softening === null) return;
    for (const { path, value } of stated(profile.data.chamberTemperature, ['chamberTemperature'])) {
      if (value.high <= softening.value) continue;
      yield {
        path,
        part: 'value',
        message: `A chamber at ${shown(value.high, 'temperature')} softens filament and part: it is above ${softening.text}`,
        found: shown(value.high, 'temperature'),
        allowed: `up to ${shown(softening.value, 'temperature')}`,
        source: softening.source,
        help: 'Check the digits and the unit; sometimes the bed temperatures were copied here.',
      };
    }
  },
};
