import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** Level at 1 m that the walls add, in dB, and whether the bench states it. */
const kinds = {
  'room stated': { room: [0, 7], stated: true },
  outdoors: { room: [0, 0.2], stated: false },
  'soft room, not stated': { room: [1, 3], stated: false },
  'usual room, not stated': { room: [2, 6], stated: false },
  'live room, not stated': { room: [6, 10], stated: false },
} as const;

type Kind = keyof typeof kinds;
const kindNames = Object.keys(kinds) as Kind[];

/** dB; how far a whole survey is off, from bench to bench, and one place from the others. */
const [betweenBenches, betweenPlaces] = [2.5, 1.2];

/** A machine that radiates evenly over a floor, in a room whose walls send back the same everywhere. */
export function simulateSound(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`sound ${index}`);
  const { normal } = noise ?? random;
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random.uniform();
  const kind = kindNames[index % kindNames.length] ?? 'room stated';
  const { room: rooms, stated } = kinds[kind];
  const [truth, room, background] = [between([42, 62]), between(rooms), between([22, 32])];
  const off = betweenBenches * random.normal();
  const energy = (level: number) => 10 ** (level / 10);
  // From the fields: the direct one falls with the square of the distance, the walls' is the same everywhere.
  const walls = energy(truth) * (energy(room) - 1);
  const distances = random.uniform() < 0.5 ? [1, 1, 1, 1, 1] : [1, 1, 1, 1, 1, 2, 2];
  const soundLevel = distances.map((distance) => {
    const own = off + betweenPlaces * normal();
    const machine = (energy(truth) / distance ** 2 + walls) * energy(own);
    return Math.round(100 * Math.log10(machine + energy(background))) / 10;
  });
  return {
    kind,
    columns: { distance: distances.map((distance) => 1000 * distance), soundLevel },
    run: {
      backgroundLevel: background,
      meterClass: 'class2',
      levelResolution: 0.1,
      ...(stated && { roomCorrection: room }),
    },
    truths: { soundLevel: truth },
  };
}
