import { figuresOutside } from '../../knowledge/figure-outside.ts';
import type { Job } from '../../registry/generated/documents.ts';
import { oncePerRegistry } from '../../registry/registry.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['job'],
  severity: 'warning',
  statement: 'The part of a job is no taller than the tallest build envelope of the registry.',
  rationale:
    'A digit too many in the number of layers or their height makes every time of the job ten times as long.',
  source: 'Machine profiles of the registry, envelope; plane geometry.',
  formula: 'n h <= max(z), n layers, h lowest layer height of the job, z heights of the machines',
  example: alike('job', { bad: '1200', good: '120' }, (layers) => `layers: ${layers} {count}`),
  *check(profile, { registry }) {
    const { layers } = profile.data;
    const layer = lowestLayer(profile.data);
    const tallest = tallestEnvelope(registry);
    if (layer === null || !Number.isFinite(tallest) || layers * layer <= tallest) return;
    if (figuresOutside(profile).some(({ path }) => path[0] === 'layers')) return;
    yield {
      path: ['layers'],
      part: 'value',
      message: `${layers} layers of ${shown(layer, 'length')} make a part ${shown(layers * layer, 'length')} tall, but no machine of the registry is taller than ${shown(tallest, 'length')}`,
      found: String(layers),
      allowed: `up to ${Math.floor(tallest / layer)} layers`,
      help: 'Check the number of layers and their height; if the machine for this job is still missing, acknowledge the finding.',
    };
  },
};

/** Height of the lowest layer of a job, mm; null where no feature has one above 0. */
function lowestLayer({ features }: Job): number | null {
  const heights = Object.values(features).flatMap((path) =>
    'layerHeight' in path && path.layerHeight > 0 ? [path.layerHeight] : [],
  );
  return heights.length === 0 ? null : Math.min(...heights);
}

/** Height of the tallest build envelope, mm; not finite where the registry holds no machine. */
const tallestEnvelope = oncePerRegistry((registry): number =>
  [...registry.machine.values()].reduce(
    (tallest, { data }) => Math.max(tallest, data.envelope.z),
    Number.NEGATIVE_INFINITY,
  ),
);
