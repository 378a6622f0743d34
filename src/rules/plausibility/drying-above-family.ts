import { familiesOf, widest } from '../../knowledge/families.ts';
import {
  dryingAllowance,
  softeningOf,
  softeningUncertainty,
  softerFamily,
} from '../../knowledge/softening.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement:
    'A spool is dried below the softening of its family, even where its own softening is stated higher.',
  rationale:
    'If the stated softening is the mistake, nothing else protects the spool: a dryer set by it fuses the turns.',
  source: `Polymer profile of the family, glassTransition and melting; ${softeningUncertainty} K for their uncertainty are common practice, no source.`,
  formula: `T_dry <= T_family - ${softeningUncertainty} K, T_family glass transition (amorphous) or melting of the family`,
  example: alike(
    'filament',
    { bad: '84 Cel', good: '70 Cel' },
    (value) => `
softening:
  - {value: 90 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
dryingTemperature:
  - {value: ${value}, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  ),
  *check({ data }, { registry }) {
    const families = familiesOf(data, registry);
    const [own, family] = [softeningOf(data, families), softerFamily(data, families)];
    if (own === null || family === null) return;
    const usual = widest(families, 'dryingTemperature');
    const unusual = usual === null ? own.value : usual.high + dryingAllowance.above;
    const bound = family.value - softeningUncertainty;
    for (const { path, value } of stated(data.dryingTemperature, ['dryingTemperature'])) {
      // Hotter is found by rules of their own.
      if (value <= bound || value > Math.min(own.value - softeningUncertainty, unusual)) continue;
      yield {
        path,
        part: 'value',
        message: `Drying at ${shown(value, 'temperature')} is safe only if the filament softens at ${shown(own.value, 'temperature')}, as stated: its family does so at ${family.text}`,
        found: shown(value, 'temperature'),
        allowed: `up to ${shown(bound, 'temperature')}`,
        source: family.source,
        help: 'Check both temperatures and the polymer against the sheet; until then dry below the softening of the family. Dryers can ignite: follow the manual of the dryer.',
      };
    }
  },
};
