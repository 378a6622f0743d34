import { cylinderMeanTheta } from '../../src/physics/cylinder-conduction.ts';
import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

const between = (random: RandomSource, low: number, high: number) => low + (high - low) * random.uniform();
const hour = 3600;

/** A spool as it dries: the share of its water that is left, by the hours in the dryer. */
interface Spool {
  readonly left: (hours: number) => number;
  /** Hours after which the slow part has fallen to a third or so. */
  readonly slow: number;
}

/** Time in which a rate that rises as the reel warms has done as much as the full rate does; by small steps. */
function warmed(rate: (hours: number) => number): (hours: number) => number {
  const step = 0.01;
  const sums = [0];
  const upTo = (index: number) => {
    while (sums.length <= index) sums.push((sums.at(-1) ?? 0) + step * rate((sums.length - 0.5) * step));
    return sums[index] ?? 0;
  };
  return (hours) => {
    const place = hours / step;
    const below = Math.floor(place);
    return upTo(below) + (place - below) * (upTo(below + 1) - upTo(below));
  };
}

/** Square of the first root of J0: a cylinder's time constant in units of a²/D is its reciprocal. */
const firstSquare = 5.783186;

const spools = {
  'one stage': (random) => {
    const constant = between(random, 1, 4);
    return { left: (hours) => Math.exp(-hours / constant), slow: constant };
  },
  'out of a strand': (random) => {
    const constant = between(random, 1, 4);
    return { left: (hours) => cylinderMeanTheta(hours / constant / firstSquare), slow: constant };
  },
  'two stages': (random) => {
    const slow = between(random, 2, 6);
    const [fast, share] = [slow / between(random, 3, 12), between(random, 0.15, 0.7)];
    const left = (hours: number) => share * Math.exp(-hours / slow) + (1 - share) * Math.exp(-hours / fast);
    return { left, slow };
  },
  'surface and strand': (random) => {
    const slow = between(random, 2, 6);
    const [fast, share] = [slow / between(random, 6, 25), between(random, 0.4, 0.8)];
    const left = (hours: number) =>
      share * cylinderMeanTheta(hours / slow / firstSquare) + (1 - share) * Math.exp(-hours / fast);
    return { left, slow };
  },
  'warm-up': (random) => {
    const [constant, warming] = [between(random, 1, 3), between(random, 0.3, 1.2)];
    // By Arrhenius about twenty times as fast at 80 °C as at 20 °C, with a reel that approaches the air's temperature.
    const strength = between(random, 2, 4);
    const done = warmed((hours) => Math.exp(-strength * Math.exp(-hours / warming)));
    return { left: (hours) => Math.exp(-done(hours) / constant), slow: constant + warming };
  },
  'late start': (random) => {
    const [constant, late] = [between(random, 1, 3), between(random, 0.4, 2)];
    const width = late * between(random, 0.1, 0.4);
    const done = warmed((hours) => 1 / (1 + Math.exp(-(hours - late) / width)));
    return { left: (hours) => Math.exp(-done(hours) / constant), slow: constant + late };
  },
} as const satisfies Readonly<Record<string, (random: RandomSource) => Spool>>;

const kinds = Object.keys(spools) as (keyof typeof spools)[];

/** Masses of an invented spool that is weighed now and then, more often at first, until it is about dry. */
export function simulateDrying(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`drying ${index}`);
  const { normal } = noise ?? random;
  const kind = kinds[index % kinds.length] ?? 'one stage';
  const { left, slow } = spools[kind](random);
  const last = slow * between(random, 3.5, 7);
  const readings = 9 + Math.floor(7 * random.uniform());
  const power = between(random, 1, 1.8);
  const hours = Array.from(
    { length: readings },
    (_, place) => Math.round(4 * last * (place / (readings - 1)) ** power) / 4,
  );
  const [dry, reel, water] = [between(random, 400, 1000), between(random, 150, 250), between(random, 2, 9)];
  const resolution = random.uniform() < 0.7 ? 0.01 : 0.1;
  const scatter = between(random, 0.3, 3) * (resolution === 0.1 ? 0.05 : resolution);
  const asked = last * between(random, 0.3, 0.8);
  const times = [...new Set(hours)];
  return {
    kind,
    columns: {
      elapsedTime: times.map((time) => time * hour),
      mass: times.map((time) => {
        const exact = reel + dry + water * left(time) + scatter * normal();
        return resolution * Math.round(exact / resolution);
      }),
    },
    run: { residualMoisture: (water * left(asked)) / dry, reelMass: reel, massResolution: resolution },
    truths: { dryingTime: asked * hour },
  };
}
