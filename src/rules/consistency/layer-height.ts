import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Millimetres } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { beadBounds, beadOverBore, isBeadUsual } from '../engine/bead-bounds.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement:
    'The layers and lines of a trial, or of the job that it prints, suit its nozzle: layers from a tenth of its bore to all of it, lines from 0.6 to 2.5 times it.',
  rationale:
    'A nozzle cannot press a higher layer onto the one below; a lost digit or another nozzle makes a result look odd later.',
  source:
    'Common practice, no source: layers are a quarter to four fifths of the nozzle diameter, lines 0.9 to 1.6 times it.',
  formula: `${beadOverBore.layerHeight.low} d <= h <= d, ${beadOverBore.lineWidth.low} d <= w <= ${beadOverBore.lineWidth.high} d, h layer height, w line width, d diameter of the nozzle`,
  example: alike(
    'trial',
    { bad: '0.8 mm', good: '0.3 mm' },
    (height) => `conditions: {nozzleTemperature: 245 Cel, layerHeight: ${height}}`,
  ),
  *check({ data }, { registry }) {
    const nozzle = pairingOfTrial(data, registry).nozzle?.diameter;
    if (nozzle === undefined || nozzle <= 0) return;
    const { layerHeight } = data.conditions;
    if (layerHeight !== undefined) yield* ofConditions(layerHeight, nozzle);
    yield* ofJob(data, nozzle, registry);
  },
};

function* ofConditions(layerHeight: Millimetres, nozzle: Millimetres): Generator<Hit> {
  if (isBeadUsual('layerHeight', layerHeight, nozzle)) return;
  yield {
    path: ['conditions', 'layerHeight'],
    part: 'value',
    message: `Layers of ${shown(layerHeight, 'length')} do not suit a nozzle of ${shown(nozzle, 'length')}`,
    found: shown(layerHeight, 'length'),
    allowed: shownRange(beadBounds('layerHeight', nozzle), 'length'),
    help: 'Check the layer height and the nozzle; if the trial was run so, acknowledge the finding.',
  };
}

/** One finding for the job as a whole, since a wrong nozzle or job makes all of its features unfit. */
function* ofJob({ job }: Trial, nozzle: Millimetres, registry: Registry): Generator<Hit> {
  const features = Object.entries(registry.job.get(job ?? '')?.data.features ?? {});
  for (const [feature, path] of features) {
    if (!('layerHeight' in path)) continue;
    const unfit = (['layerHeight', 'lineWidth'] as const).find(
      (part) => !isBeadUsual(part, path[part], nozzle),
    );
    if (unfit === undefined) continue;
    const what = unfit === 'layerHeight' ? 'Layers' : 'Lines';
    yield {
      path: ['job'],
      part: 'value',
      message: `${what} of ${shown(path[unfit], 'length')} for ${feature} of the job ${job} do not suit a nozzle of ${shown(nozzle, 'length')}`,
      found: shown(path[unfit], 'length'),
      allowed: shownRange(beadBounds(unfit, nozzle), 'length'),
      help: `Check which nozzle printed the job, and the layers and lines in jobs/${job}.yaml.`,
    };
    return;
  }
}
