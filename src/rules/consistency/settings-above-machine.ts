import type { Hit } from '../../registry/hit.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The speeds and accelerations of a reference print are within the stated limits of its machine.',
  rationale:
    'The controller caps settings that are too high: the print ran slower than the trial says, and the time model gets the blame.',
  source: 'Machine profile, topSpeed and acceleration.',
  example: alike(
    'trial',
    { bad: '2000 mm/s', good: '200 mm/s' },
    (value) => `
settings:
  infill: {speed: ${value}, acceleration: 6000 mm/s2}`,
  ),
  *check(profile, { registry }) {
    const machine = registry.machine.get(profile.data.machine ?? '')?.data;
    if (machine === undefined) return;
    const topSpeed = highestStated(machine.topSpeed);
    const hardest = highestStated(machine.acceleration);
    for (const [feature, { speed, acceleration }] of Object.entries(profile.data.settings ?? {})) {
      yield* above(feature, speed, topSpeed, 'speed', machine.id);
      yield* above(feature, acceleration, hardest, 'acceleration', machine.id);
    }
  },
};

function* above(
  feature: string,
  value: number,
  limit: number | null,
  dimension: 'speed' | 'acceleration',
  machine: string,
): Generator<Hit> {
  if (limit === null || value <= limit) return;
  yield {
    path: ['settings', feature, dimension],
    part: 'value',
    blames: [
      { of: { kind: 'machine', id: machine }, path: [dimension === 'speed' ? 'topSpeed' : 'acceleration'] },
    ],
    message: `The print is set to ${shown(value, dimension)} for ${feature}, but ${machine} is limited to ${shown(limit, dimension)}`,
    found: shown(value, dimension),
    allowed: `up to ${shown(limit, dimension)}`,
    help: 'Check the digits of the setting, and the limit of the machine.',
  };
}
