import { bedBound } from '../../knowledge/bed-bound.ts';
import { familiesOf, familyNames, widest } from '../../knowledge/families.ts';
import { softensAtGlass } from '../../knowledge/softening.ts';
import type { Filament, Polymer } from '../../registry/generated/documents.ts';
import { highestStated, stated } from '../../registry/stated.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Share of the glass transition in degrees Celsius that the hottest bed reaches at least, and K above it that the coldest stays. */
const usual = { share: 0.65, above: 8 };

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement:
    'The bed window of an amorphous filament reaches near its softening, and does not begin above it.',
  rationale:
    'On a bed that is far too cold the part comes loose, on one that is always too hot its lowest layers spread; often the window is that of another filament.',
  source: `Polymer profile of the family, glassTransition. ${100 * usual.share} % of it in degrees Celsius, and ${usual.above} K: common practice, no source.`,
  formula: `T_bed,high >= ${usual.share} T_g,low and T_bed,low <= T_g,high + ${usual.above} K, T_g the glass transition of the family, or the stated softening where that is lower; temperatures in degrees Celsius`,
  example: stating('filament', 'bedTemperature', { bad: '20..40 Cel', good: '70..80 Cel' }),
  *check({ data }, { registry }) {
    const families = familiesOf(data, registry);
    const glass = softest(data, families);
    if (glass === null) return;
    const melts = bedBound(data, families)?.value ?? Number.POSITIVE_INFINITY;
    const sane = { low: usual.share * glass.low, high: glass.high + usual.above };
    for (const { path, value } of stated(data.bedTemperature, ['bedTemperature'])) {
      const isCold = value.high < sane.low;
      // Where it melts the part, a rule of its own says so.
      if (!isCold && (value.low <= sane.high || value.high > melts)) continue;
      yield {
        path,
        part: 'value',
        message: `A bed at ${shownRange(value, 'temperature')} is ${isCold ? 'too cold to hold' : 'hotter than is usual for'} ${familyNames(families)}, which softens at ${shownRange(glass, 'temperature')}`,
        found: shownRange(value, 'temperature'),
        allowed: isCold
          ? `a range that reaches ${shown(sane.low, 'temperature')}`
          : `a range that begins at ${shown(sane.high, 'temperature')} or lower`,
        source: glass.source,
        help: 'Compare it with the sheet, and with the polymer that the profile names.',
      };
    }
  },
};

interface Glass {
  readonly low: DegreesCelsius;
  readonly high: DegreesCelsius;
  readonly source: string;
}

/** The glass transition of amorphous families, or the stated softening where that is lower; null where one crystallises. */
function softest(filament: Filament, families: readonly Polymer[]): Glass | null {
  if (families.length === 0 || !families.every(softensAtGlass)) return null;
  const glass = widest(families, 'glassTransition');
  const own = highestStated(filament.softening) ?? Number.POSITIVE_INFINITY;
  return glass && { ...glass, low: Math.min(own, glass.low), high: Math.min(own, glass.high) };
}
