import { figuresOutside } from '../../knowledge/figure-outside.ts';
import type { Job, Trial } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'job' | 'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['job', 'trial'],
  severity: 'warning',
  statement:
    'The part of a job is no taller than the tallest build envelope of the registry, and one that was printed no taller than that of its machine.',
  rationale:
    'A digit too many in the number of layers or their height makes every time of the job ten times as long.',
  source: 'Machine profiles of the registry, envelope; plane geometry.',
  formula: 'n h <= max(z), n layers, h lowest layer height of the job, z heights of the machines',
  example: alike('job', { bad: '1200', good: '120' }, (layers) => `layers: ${layers} {count}`),
  *check(profile, { registry }) {
    if (profile.kind === 'job') yield* tallerThanAll(profile, registry);
    else yield* tallerThanItsMachine(profile.data, registry);
  },
};

function* tallerThanAll(profile: Profile<'job'>, registry: Registry): Generator<Hit> {
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
}

function* tallerThanItsMachine(trial: Trial, registry: Registry): Generator<Hit> {
  const job = registry.job.get(trial.job ?? '')?.data;
  const machine = registry.machine.get(trial.machine ?? '')?.data;
  if (job === undefined || machine === undefined) return;
  const layer = lowestLayer(job);
  const { z } = machine.envelope;
  // Taller than every machine is found at the job.
  if (layer === null || job.layers * layer <= z || job.layers * layer > tallestEnvelope(registry)) return;
  yield {
    path: ['job'],
    part: 'value',
    message: `The job ${job.id} is ${shown(job.layers * layer, 'length')} tall (${job.layers} layers of ${shown(layer, 'length')}), but ${machine.id} prints no taller than ${shown(z, 'length')}`,
    found: job.id,
    allowed: `a job up to ${shown(z, 'length')} tall`,
    help: 'Check which machine printed the job, and the layers of the job.',
  };
}

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
