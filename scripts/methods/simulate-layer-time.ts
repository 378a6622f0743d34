import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** How steeply the quality passes the accepted one: grades over one e-fold of the layer time. */
const kinds = {
  gradual: { steepness: [1.5, 4], noise: [0.15, 0.35] },
  sudden: { steepness: [12, 40], noise: [0.15, 0.35] },
  'gradual, graded roughly': { steepness: [1.5, 4], noise: [0.4, 0.7] },
} as const;

type Kind = keyof typeof kinds;
const kindNames = Object.keys(kinds) as Kind[];
/** As a plan lays them out. */
const shares = [0.4, 0.55, 0.7, 0.85, 1, 1.25, 1.6, 2.2, 3];
const accepted = 3.5;

/** Grades of small specimens at several layer times. */
export function simulateLayerTime(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`layer time ${index}`);
  const { normal } = noise ?? random;
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random.uniform();
  const kind = kindNames[index % kindNames.length] ?? 'gradual';
  const [centre, steepness, deviation] = [
    between([3, 15]),
    between(kinds[kind].steepness),
    between(kinds[kind].noise),
  ];
  const limit = centre * between([0.65, 1.8]);
  const repeats = 1 + Math.floor(3 * random.uniform());
  const layerTime = shares.flatMap((share) =>
    Array<number>(repeats).fill(Math.round(20 * centre * share) / 20),
  );
  const grade = layerTime.map((time) => {
    const quality =
      3 + 2.4 * Math.tanh((steepness * Math.log(time / limit)) / 2.4 + Math.atanh((accepted - 3) / 2.4));
    return Math.min(5, Math.max(1, Math.round(quality + deviation * normal())));
  });
  return { kind, columns: { layerTime, grade }, run: {}, truths: { shortestLayerTime: limit } };
}
