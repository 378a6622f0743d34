import type { Filament } from '../registry/generated/documents.ts';
import type { Registry } from '../registry/registry.ts';
import type { Range } from '../units/canonical.ts';
import { familiesOf } from './families.ts';
import { impossibleEnd, nozzleEnvelope, unquestioned, usualAllowance } from './nozzle-envelope.ts';
import type { ProfileRule } from './rule.ts';
import { shown, shownRange } from './wording.ts';

export const trialOutsideWindow: ProfileRule = {
  judges: 'profile',
  code: 'consistency/trial-outside-window',
  severity: 'warning',
  statement: 'A trial is run within the nozzle temperatures that its filament is made for.',
  rationale:
    'Tables use limits inside of the window only; a temperature far from it is often a slip or the wrong spool.',
  source: `Filament profile, nozzleTemperature; ${usualAllowance} K of allowance are common practice, no source.`,
  example: {
    kind: 'filament',
    bad: `
nozzleTemperature:
  - {value: 215..225 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    good: `
nozzleTemperature:
  - {value: 215..235 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  },
  *check(profile, { registry }) {
    if (profile.kind !== 'trial') return;
    const filament = registry.filament.get(profile.data.filament)?.data;
    const window = filament === undefined ? null : saneWindow(filament, registry);
    if (filament === undefined || window === null) return;
    const value = profile.data.conditions.nozzleTemperature;
    const sane = { low: window.low - usualAllowance, high: window.high + usualAllowance };
    if (isQuestioned(value, filament, registry) || (value >= sane.low && value <= sane.high)) return;
    yield {
      path: ['conditions', 'nozzleTemperature'],
      part: 'value',
      message: `The trial runs at ${shown(value, 'temperature')}, and ${filament.id} is made for ${shownRange(window, 'temperature')}`,
      found: shown(value, 'temperature'),
      allowed: shownRange(sane, 'temperature'),
      help: 'Check the temperature and the spool; a ladder outside of the window says so in its notes.',
    };
  },
};

/** The widest window that the filament states; null where a slip in it is found by its own rules. */
function saneWindow(filament: Filament, registry: Registry): Range | null {
  const windows = filament.nozzleTemperature.map(({ value }) => value);
  if (windows.length === 0) return null;
  const window = {
    low: Math.min(...windows.map(({ low }) => low)),
    high: Math.max(...windows.map(({ high }) => high)),
  };
  const envelope = nozzleEnvelope(familiesOf(filament, registry));
  return impossibleEnd(window, envelope) === null ? window : null;
}

/** Whether the rules on the family already question the temperature. */
function isQuestioned(value: number, filament: Filament, registry: Registry): boolean {
  const envelope = nozzleEnvelope(familiesOf(filament, registry));
  const sane = unquestioned(envelope, filament.fillers !== undefined);
  const outside = sane !== null && (value < sane.low || value > sane.high);
  return outside || impossibleEnd({ low: value, high: value }, envelope) !== null;
}
