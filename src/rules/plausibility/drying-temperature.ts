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
  severity: 'error',
  statement: 'A spool is dried below the softening temperature of its filament.',
  rationale: 'Above it the turns fuse into one block, and the spool may sag into the dryer.',
  source:
    'Glass transition or melting of the family in its polymer profile; amorphous filaments soften at the glass transition: Osswald & Menges, Materials Science of Polymers for Engineers (from memory). It is known to about 2 K (common practice, no source); within these it is a warning.',
  example: stating('filament', 'dryingTemperature', { bad: '95 Cel', good: '65 Cel' }),
  *check(profile, { registry }) {
    const softening = softeningOf(profile.data, familiesOf(profile.data, registry));
    if (softening === null) return;
    for (const { path, value } of stated(profile.data.dryingTemperature, ['dryingTemperature'])) {
      // Within the uncertainty it is a warning of its own.
      if (value <= softening.value + softeningUncertainty) continue;
      yield {
        path,
        part: 'value',
        message: `Drying at ${shown(value, 'temperature')} fuses the spool: it is above ${softening.text}`,
        found: shown(value, 'temperature'),
        allowed: `up to ${shown(softening.value, 'temperature')}`,
        source: softening.source,
        help: 'Dry colder and longer, some kelvin below the softening; check that the sheet is not in degrees Fahrenheit. Dryers can ignite: follow the manual of the dryer.',
      };
    }
  },
};
