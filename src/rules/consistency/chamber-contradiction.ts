import type { Machine } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'error',
  statement: 'The statements of a machine about its chamber and its sensors agree.',
  rationale: 'People choose a machine for hot materials by these flags.',
  source: 'Format of the registry: one fact, stated twice, is the same fact.',
  example: {
    kind: 'machine',
    bad: 'chamber: {enclosed: false, heated: true, sensed: true}',
    good: 'chamber: {enclosed: true, heated: true, sensed: true}',
  },
  *check(profile) {
    yield* contradictions(profile.data);
  },
};

function* contradictions({ chamber, sensors = [] }: Machine): Generator<Hit> {
  if (chamber.heated && !chamber.enclosed)
    yield {
      path: ['chamber', 'heated'],
      part: 'value',
      message: 'The chamber is heated but not enclosed, so there is nothing to heat',
      found: 'true',
      allowed: 'false, or an enclosed chamber',
      help: 'Correct `enclosed` or `heated`.',
    };
  else if (!chamber.enclosed) yield* signsOfWalls(chamber, sensors);
  const listed = sensors.indexOf('chamberTemperature');
  if (listed >= 0 && !chamber.sensed) {
    yield {
      path: ['chamber', 'sensed'],
      part: 'value',
      message: 'The sensors list `chamberTemperature`, but the chamber is not `sensed`',
      found: 'false',
      allowed: 'true',
      help: 'Correct one of them.',
    };
  }
}

/** What only a machine with walls and a door can have. */
function* signsOfWalls(
  { temperatureLimit, sensed }: Machine['chamber'],
  sensors: NonNullable<Machine['sensors']>,
): Generator<Hit> {
  const signs = [
    ...(sensors.includes('doorOpen') ? ['a sensor on the door (`doorOpen`)'] : []),
    ...(sensed || sensors.includes('chamberTemperature') ? ['a chamber temperature sensor'] : []),
    ...(temperatureLimit === undefined ? [] : ['a highest temperature of the chamber']),
  ];
  if (signs.length === 0) return;
  yield {
    path: ['chamber', 'enclosed'],
    part: 'value',
    message: `The chamber is not enclosed, but the machine has ${signs.join(' and ')}`,
    found: 'false',
    allowed: 'true, or a machine without them',
    help: 'Correct `enclosed`, or take out what belongs to another machine.',
  };
}
