import type { Hit } from '../../registry/hit.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A reference print is set to no speed and acceleration above what its machine is said to do.',
  rationale:
    'The controller caps what is set too high: the print then ran slower than the trial says, and the time model is blamed.',
  source: 'Machine profile, topSpeed and acceleration.',
  example: {
    kind: 'trial',
    bad: `
settings:
  infill: {speed: 2000 mm/s, acceleration: 6000 mm/s2}`,
    good: `
settings:
  infill: {speed: 200 mm/s, acceleration: 6000 mm/s2}`,
  },
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
    message: `The print is set to ${shown(value, dimension)} for ${feature}, and ${machine} does ${shown(limit, dimension)}`,
    found: shown(value, dimension),
    allowed: `up to ${shown(limit, dimension)}`,
    help: 'Check the digits of the setting, and of what the machine is said to do.',
  };
}
