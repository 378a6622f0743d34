import {
  fillerAllowance,
  impossibleEnd,
  nozzleEnvelope,
  unquestioned,
  usualAllowance,
} from '../../knowledge/nozzle-envelope.ts';
import { nozzleTemperatures } from '../../knowledge/nozzle-temperature-places.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'warning',
  statement: 'A nozzle temperature is close to the usual ones of the polymer family.',
  rationale:
    'A temperature far from the usual ones is a mistake, or belongs to a special grade, which is worth a note.',
  source: `Polymer profile of the family, nozzleTemperature; ${usualAllowance} K of allowance, ${fillerAllowance} K more for fillers: common practice, no source.`,
  example: stating('filament', 'nozzleTemperature', { bad: '195..255 Cel', good: '205..255 Cel' }),
  *check(profile, { registry }) {
    for (const { path, range, families, filled, foamed } of nozzleTemperatures(profile, registry)) {
      const envelope = nozzleEnvelope(families, foamed);
      const sane = unquestioned(envelope, filled);
      if (sane === null || envelope.usual === null || impossibleEnd(range, envelope) !== null) continue;
      if (range.low >= sane.low && range.high <= sane.high) continue;
      const value = range.low < sane.low ? range.low : range.high;
      yield {
        path,
        part: 'value',
        message: `A nozzle temperature of ${shown(value, 'temperature')} is unusual: the family is extruded at ${shownRange(envelope.usual, 'temperature')}`,
        found: shown(value, 'temperature'),
        allowed: shownRange(sane, 'temperature'),
        source: envelope.usual.source,
        help: 'Check it against the sheet; if the grade really needs it, acknowledge the finding with the reason.',
      };
    }
  },
};
