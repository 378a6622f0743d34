import { familiesOf, familyNames, widest } from '../../knowledge/families.ts';
import { stated } from '../../registry/stated.ts';
import { shownNumber } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Sheets add a reserve for wet spools, and fans save time. */
const factor = 4;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'A filament is dried about as long as its family is.',
  rationale: 'Much shorter and it stays wet, much longer and it ages; often a digit or a unit is wrong.',
  source: `Polymer profile of the family, dryingTime; a factor of ${factor} beyond it is common practice, no source.`,
  formula: `t_low/${factor} <= t <= ${factor} t_high, t_low and t_high of the family`,
  example: stating('filament', 'dryingTime', { bad: '40 h', good: '6 h' }),
  *check(profile, { registry }) {
    const families = familiesOf(profile.data, registry);
    const usual = widest(families, 'dryingTime');
    if (usual === null) return;
    const sane = { low: usual.low / factor, high: usual.high * factor };
    for (const { path, value } of stated(profile.data.dryingTime, ['dryingTime'])) {
      if (value >= sane.low && value <= sane.high) continue;
      yield {
        path,
        part: 'value',
        message: `Drying for ${hours(value)} is unusual: ${familyNames(families)} is dried for ${hours(usual.low)} to ${hours(usual.high)}`,
        found: hours(value),
        allowed: `${hours(sane.low)} to ${hours(sane.high)}`,
        source: usual.source,
        help: 'Check the digits and the unit against the sheet.',
      };
    }
  },
};

/** A time in seconds as dryers count it. */
function hours(seconds: number): string {
  return `${shownNumber(seconds / 3600)} h`;
}
