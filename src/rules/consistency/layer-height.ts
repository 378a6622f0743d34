import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Layer height over the diameter of the nozzle. */
const usual: Range = { low: 0.1, high: 1 };

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The layers of a trial are at most as high as the nozzle is wide, and at least a tenth of it.',
  rationale:
    'A nozzle cannot press a higher layer onto the one below; a lost digit makes a result look odd later.',
  source: 'Common practice, no source: layers are a quarter to four fifths of the nozzle diameter.',
  formula: `${usual.low} d <= h <= d, h layer height, d diameter of the nozzle`,
  example: alike(
    'trial',
    { bad: '0.8 mm', good: '0.3 mm' },
    (height) => `conditions: {nozzleTemperature: 245 Cel, layerHeight: ${height}}`,
  ),
  *check(profile, { registry }) {
    const { layerHeight } = profile.data.conditions;
    const nozzle = pairingOfTrial(profile.data, registry).nozzle?.diameter;
    if (layerHeight === undefined || nozzle === undefined || nozzle <= 0) return;
    const allowed = { low: usual.low * nozzle, high: usual.high * nozzle };
    if (layerHeight >= allowed.low && layerHeight <= allowed.high) return;
    yield {
      path: ['conditions', 'layerHeight'],
      part: 'value',
      message: `Layers of ${shown(layerHeight, 'length')} do not suit a nozzle of ${shown(nozzle, 'length')}`,
      found: shown(layerHeight, 'length'),
      allowed: shownRange(allowed, 'length'),
      help: 'Check the layer height and the nozzle; if the trial was run so, acknowledge the finding.',
    };
  },
};
