import { familiesOf } from '../../knowledge/families.ts';
import { lowerSoftening, softensAtGlass } from '../../knowledge/softening.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In K. */
const nearest = 10;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'The chamber of an amorphous filament stays 10 K below its softening and that of its family.',
  rationale:
    'Near its glass transition a part creeps under its own weight, and the strand buckles in the drive; often the window is that of another filament.',
  source: `Polymer profile of the family, glassTransition; softening as the sheet states it. ${nearest} K: common practice, no source.`,
  formula: `T_chamber <= T_soft - ${nearest} K, T_soft the lower of the stated softening and the upper glass transition of the family`,
  example: stating('filament', 'chamberTemperature', { bad: '20..80 Cel', good: '20..50 Cel' }),
  *check({ data }, { registry }) {
    const families = familiesOf(data, registry);
    if (!families.every(softensAtGlass)) return;
    const softening = lowerSoftening(data, families);
    if (softening === null) return;
    const bound = softening.value - nearest;
    for (const { path, value } of stated(data.chamberTemperature, ['chamberTemperature'])) {
      // Above the softening it is an error of its own.
      if (value.high <= bound || value.high > softening.value) continue;
      yield {
        path,
        part: 'value',
        message: `A chamber at ${shown(value.high, 'temperature')} is close to ${softening.text}`,
        found: shown(value.high, 'temperature'),
        allowed: `up to ${shown(bound, 'temperature')}`,
        source: softening.source,
        help: 'Compare it with the sheet, and with the polymer that the profile names.',
      };
    }
  },
};
