import { type Envelope, familiesOf, familyNames, widest } from '../../knowledge/families.ts';
import { roomTemperature } from '../../knowledge/melt-heat.ts';
import type { Polymer } from '../../registry/generated/documents.ts';
import { stated } from '../../registry/stated.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Softening by other tests (Vicat, deflection under load) differs so much from the glass transition (common practice, no source). */
const allowance = 20;
/** A second polymer or a softener draws the transition of a stiff one so far towards the room (common practice, no source). */
const modifiedShare = 0.3;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement:
    'A filament softens near the glass transition of its family or, if it crystallises, below its melting point.',
  rationale:
    'Drying, bed and chamber temperatures are checked against it; if it is wrong, their mistakes are missed.',
  source: `Polymer profile of the family, glassTransition and melting; ${allowance} K of allowance, below it for stiff families ${100 * modifiedShare} % of the way to room temperature: common practice, no source.`,
  example: stating('filament', 'softening', { bad: '130 Cel', good: '77 Cel' }),
  *check(profile, { registry }) {
    const families = familiesOf(profile.data, registry);
    const band = softeningBand(families);
    if (band === null) return;
    const below = Math.max(allowance, modifiedShare * (band.low - roomTemperature));
    const sane = { low: band.low - below, high: band.high + allowance };
    for (const { path, value } of stated(profile.data.softening, ['softening'])) {
      if (value >= sane.low && value <= sane.high) continue;
      yield {
        path,
        part: 'value',
        message: `A softening at ${shown(value, 'temperature')} does not fit ${familyNames(families)}, which softens within ${shownRange(band, 'temperature')}`,
        found: shown(value, 'temperature'),
        allowed: shownRange(sane, 'temperature'),
        source: band.source,
        help: 'State the glass transition of an amorphous grade; check digits, unit and polymer.',
      };
    }
  },
};

function softeningBand(families: readonly Polymer[]): Envelope | null {
  const glass = widest(families, 'glassTransition');
  const crystalline = families.some(({ structure }) => structure === 'semiCrystalline');
  if (glass === null || !crystalline) return glass;
  const melting = widest(families, 'melting');
  return melting && { low: glass.low, high: melting.high, source: melting.source };
}
