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
    const softens = softeningOf(families);
    if (softens === null) return;
    const { band } = softens;
    const below = Math.max(allowance, modifiedShare * (band.low - roomTemperature));
    const sane = { low: band.low - below, high: band.high + allowance };
    for (const { path, value } of stated(profile.data.softening, ['softening'])) {
      if (value >= sane.low && value <= sane.high) continue;
      yield {
        path,
        part: 'value',
        message: `A softening at ${shown(value, 'temperature')} does not fit ${familyNames(families)}, ${softens.words}`,
        found: shown(value, 'temperature'),
        allowed: shownRange(sane, 'temperature'),
        source: band.source,
        help: 'State the glass transition, or the deflection under load of a grade that crystallises; check digits, unit and polymer.',
      };
    }
  },
};

/** Where a family softens, and what it is that happens there: the glass transition, and the melting of one that crystallises. */
function softeningOf(
  families: readonly Polymer[],
): { readonly band: Envelope; readonly words: string } | null {
  const glass = widest(families, 'glassTransition');
  if (glass === null) return null;
  const words = `whose glass transition lies within ${shownRange(glass, 'temperature')}`;
  if (!families.some(({ structure }) => structure === 'semiCrystalline')) return { band: glass, words };
  const melting = widest(families, 'melting');
  if (melting === null) return null;
  return {
    band: { low: glass.low, high: melting.high, source: melting.source },
    words: `${words}, and which melts within ${shownRange(melting, 'temperature')}`,
  };
}
