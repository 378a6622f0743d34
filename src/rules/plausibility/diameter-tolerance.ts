import { isFilamentDiameter } from '../../knowledge/filament-diameters.ts';
import { shown, shownRange } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** As shares of the diameter: 5 um to 0.1 mm on 1.75 mm. */
const plausible = { low: 0.003, high: 0.06 };

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'The tolerance of a filament is between 0.3 % and 6 % of its diameter.',
  rationale:
    'The flow goes with the square of the diameter, and a filament that varies more jams in the drive.',
  source: 'Common practice, no source: filaments are sold with 0.02 mm to 0.1 mm on 1.75 mm.',
  example: {
    kind: 'filament',
    bad: 'diameterTolerance: 0.3 mm',
    good: 'diameterTolerance: 0.03 mm',
  },
  *check(profile) {
    const { diameter, diameterTolerance: tolerance } = profile.data;
    if (tolerance === undefined || tolerance <= 0 || !isFilamentDiameter(diameter)) return;
    const sane = { low: plausible.low * diameter, high: plausible.high * diameter };
    if (tolerance >= sane.low && tolerance <= sane.high) return;
    yield {
      path: ['diameterTolerance'],
      part: 'value',
      message: `A tolerance of ${shown(tolerance, 'length')} on ${shown(diameter, 'length')} is ${tolerance < sane.low ? 'finer than filament can be made' : 'coarser than a drive can feed'}`,
      found: shown(tolerance, 'length'),
      allowed: shownRange(sane, 'length'),
      help: 'Check the decimal point; the tolerance is the deviation to either side.',
    };
  },
};
