import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

const between = (random: RandomSource, low: number, high: number) => low + (high - low) * random.uniform();

/** Quality as a share of the best or thereabouts, by the nozzle temperature in °C. */
type Quality = (temperature: number) => number;

const qualities = {
  'parabola-like': (random) => {
    const [best, below, above] = [
      between(random, 220, 235),
      between(random, 35, 65),
      between(random, 30, 60),
    ];
    return (at) => Math.exp(-(((at - best) / (at < best ? below : above)) ** 2));
  },
  'flat-topped': (random) => {
    const [middle, half] = [between(random, 222, 233), between(random, 18, 28)];
    const [below, above] = [between(random, 3, 8), between(random, 3, 8)];
    return (at) =>
      0.1 + 0.9 / (1 + Math.exp((middle - half - at) / below)) / (1 + Math.exp((at - middle - half) / above));
  },
  plateau: (random) => {
    const [middle, half] = [between(random, 222, 233), between(random, 10, 18)];
    const slopes = [between(random, 0.008, 0.02), between(random, 0.008, 0.02)];
    return (at) =>
      Math.max(
        0.2,
        Math.min(1, 1 + (slopes[0] ?? 0) * (at - middle + half), 1 - (slopes[1] ?? 0) * (at - middle - half)),
      );
  },
  'two peaks': (random) => {
    const [middle, apart] = [between(random, 222, 233), between(random, 13, 18)];
    const [width, dip, tilt] = [
      between(random, 16, 22),
      between(random, 0.03, 0.09),
      between(random, -0.03, 0.03),
    ];
    const shape: Quality = (at) => {
      const way = Math.abs(at - middle);
      const inside = 1 - (dip / 2) * (1 + Math.cos((Math.PI * way) / apart));
      return way < apart ? inside : Math.exp(-(((way - apart) / width) ** 2));
    };
    return (at) => shape(at) * (1 + (tilt * (at - middle)) / apart);
  },
} as const satisfies Readonly<Record<string, (random: RandomSource) => Quality>>;

const kinds = Object.keys(qualities) as (keyof typeof qualities)[];

/** Where a quality passes a level, going outward from a temperature by steps of 0.05 K. */
function outward(quality: Quality, from: number, level: number, step: number): number {
  let at = from;
  while (quality(at) >= level && Math.abs(at - from) < 150) at += step;
  return at;
}

/** Strengths or grades of specimens of an invented filament, at temperatures on both sides of the best. */
export function simulateSweep(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`sweep ${index}`);
  const { normal } = noise ?? random;
  const kind = kinds[index % kinds.length] ?? 'parabola-like';
  const graded = Math.floor(index / kinds.length) % 3 === 2;
  const quality = qualities[kind](random);
  const grid = Array.from({ length: 2000 }, (_, place) => 180 + place * 0.05);
  const best = grid.reduce((high, at) => (quality(at) > quality(high) ? at : high), 180);
  const share = between(random, 0.85, 0.92);
  // Grades pass 3.5 where the accepted share of the best is left.
  const level = share * quality(best);
  const spacing = random.uniform() < 0.5 ? 10 : between(random, 6, 12);
  const first = between(random, 178, 192);
  const temperatures = Array.from({ length: Math.ceil((272 - first) / spacing) }, (_, place) =>
    Math.round(first + place * spacing),
  );
  const repeats = 2 + Math.floor(random.uniform() * 3);
  const nozzleTemperature = temperatures.flatMap((at) => Array<number>(repeats).fill(at));
  const [scatter, spread] = [between(random, 0.02, 0.08), between(random, 0.2, 0.6)];
  const readings = nozzleTemperature.map((at) => {
    if (!graded) return Math.round(300 * quality(at) * Math.exp(scatter * normal())) / 10;
    const grade = 3.5 + (15 * (quality(at) - level)) / quality(best) + spread * normal();
    return Math.min(5, Math.max(1, Math.round(grade)));
  });
  return {
    kind: graded ? `${kind}, graded` : kind,
    columns: { nozzleTemperature, [graded ? 'grade' : 'bondStrength']: readings },
    run: graded ? {} : { acceptedStrength: share },
    truths: {
      lowestNozzleTemperature: outward(quality, best, level, -0.05),
      highestNozzleTemperature: outward(quality, best, level, 0.05),
    },
  };
}
