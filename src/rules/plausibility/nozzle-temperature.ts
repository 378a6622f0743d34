import {
  gradeAllowance,
  impossibleEnd,
  nozzleEnvelope,
  unquestioned,
} from '../../knowledge/nozzle-envelope.ts';
import { nozzleTemperatures } from '../../knowledge/nozzle-temperature-places.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import { fahrenheitSlip } from '../engine/fahrenheit-slip.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement: 'At a stated nozzle temperature the polymer flows and does not decompose.',
  rationale:
    'Too cold, the drive grinds the filament; too hot, the melt chars, gives off fumes and blocks the hot end. The usual mistake is a value in degrees Fahrenheit.',
  source:
    'Polymer profile of the family: melting, glass transition, nozzle temperature limit; the allowances are common practice, no source.',
  formula: `T_m - ${gradeAllowance} K (semi-crystalline) or T_g + 80 K - ${gradeAllowance} K (amorphous) <= T_nozzle <= T_limit + ${gradeAllowance} K`,
  example: stating('filament', 'nozzleTemperature', { bad: '446..491 Cel', good: "'446..491 [degF]'" }),
  *check(profile, { registry }) {
    for (const { path, range, families, filled, foamed } of nozzleTemperatures(profile, registry)) {
      const envelope = nozzleEnvelope(families, foamed);
      const end = impossibleEnd(range, envelope);
      if (end === null) continue;
      const sane = unquestioned(envelope, filled);
      yield {
        path,
        part: 'value',
        message: `A nozzle temperature of ${shown(end.value, 'temperature')} is ${end.text} (allowance ${gradeAllowance} K)`,
        found: rangeText(range),
        ...(sane !== null && { allowed: shownRange(sane, 'temperature') }),
        source: end.bound.source,
        help:
          (sane && fahrenheitSlip(range, sane)) ??
          'Compare it with the sheet of the filament; check the digits and the unit.',
      };
    }
  },
};

function rangeText(range: Range): string {
  return range.low === range.high ? shown(range.low, 'temperature') : shownRange(range, 'temperature');
}
