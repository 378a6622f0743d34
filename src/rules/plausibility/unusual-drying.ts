import { familiesOf, familyNames, widest } from '../../knowledge/families.ts';
import { dryingAllowance, softeningOf, softeningUncertainty } from '../../knowledge/softening.ts';
import { stated } from '../../registry/stated.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In °C: plastic reels soften above it, so filaments of families that are dried hotter are often dried at that, and longer. */
const dryerForReels = 70;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'A filament is dried near the temperatures at which its family is dried.',
  rationale: 'Much colder and it stays wet, much hotter and it yellows or sticks; often the unit is wrong.',
  source: `Polymer profile of the family, dryingTemperature; ${dryingAllowance.below} K below and ${dryingAllowance.above} K above it, and ${dryerForReels} Cel, which most reels and dryers bear, are common practice, no source.`,
  example: alike(
    'filament',
    { bad: '88 Cel', good: '65 Cel' },
    (value) => `
softening:
  - {value: 90 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
dryingTemperature:
  - {value: ${value}, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  ),
  *check(profile, { registry }) {
    const families = familiesOf(profile.data, registry);
    const usual = widest(families, 'dryingTemperature');
    const softening = softeningOf(profile.data, families);
    if (usual === null) return;
    const sane = {
      low: Math.min(usual.low - dryingAllowance.below, dryerForReels),
      high: usual.high + dryingAllowance.above,
    };
    for (const { path, value } of stated(profile.data.dryingTemperature, ['dryingTemperature'])) {
      const fuses = softening !== null && value > softening.value - softeningUncertainty;
      if (fuses || (value >= sane.low && value <= sane.high)) continue;
      yield {
        path,
        part: 'value',
        message: `Drying at ${shown(value, 'temperature')} is unusual: ${familyNames(families)} is dried at ${shownRange(usual, 'temperature')}`,
        found: shown(value, 'temperature'),
        allowed: shownRange(sane, 'temperature'),
        source: usual.source,
        help: 'Check the digits and the unit against the sheet.',
      };
    }
  },
};
