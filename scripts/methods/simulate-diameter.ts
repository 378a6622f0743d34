import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** What a strand is like, and how it is read. */
const kinds = {
  'oval, micrometer': { resolution: 0.001, noise: [0.0005, 0.002], oval: [0.004, 0.03], repeats: 1 },
  'oval, caliper': { resolution: 0.01, noise: [0.003, 0.012], oval: [0.01, 0.06], repeats: 1 },
  'round, read once': { resolution: 0.001, noise: [0.0005, 0.004], oval: [0, 0], repeats: 1 },
  'round, caliper': { resolution: 0.01, noise: [0.002, 0.012], oval: [0, 0], repeats: 1 },
  'round, read twice': { resolution: 0.001, noise: [0.001, 0.004], oval: [0, 0], repeats: 2 },
  'slightly oval, read twice': { resolution: 0.001, noise: [0.001, 0.004], oval: [0.001, 0.006], repeats: 2 },
  'slightly oval, read once': { resolution: 0.001, noise: [0.001, 0.004], oval: [0.001, 0.006], repeats: 1 },
  'turning, read twice': { resolution: 0.001, noise: [0.001, 0.004], oval: [0.004, 0.03], repeats: 2 },
  'turning, read once': { resolution: 0.001, noise: [0.001, 0.004], oval: [0.004, 0.03], repeats: 1 },
} as const;

type Kind = keyof typeof kinds;
const kindNames = Object.keys(kinds) as Kind[];

/** An invented strand, read across two axes by a gauge that is off by something of its own. */
export function simulateDiameter(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`diameter ${index}`);
  const { normal } = noise ?? random;
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random.uniform();
  const kind = kindNames[index % kindNames.length] ?? 'oval, micrometer';
  const { resolution, noise: noises, oval: ovals, repeats } = kinds[kind];
  const [deviation, oval, mean, spread] = [
    between(noises),
    between(ovals),
    between([1.72, 1.78]),
    between([0.003, 0.02]),
  ];
  const accuracy = resolution * between([2, 4]);
  const error = accuracy * (2 * random.uniform() - 1);
  const turns = kind.startsWith('turning');
  const places = 10 + Math.floor(15 * random.uniform());
  const columns = { position: [] as number[], firstDiameter: [] as number[], secondDiameter: [] as number[] };
  const read = (diameter: number) =>
    Math.round((diameter + error + deviation * normal()) / resolution) * resolution;
  for (let place = 0; place < places; place++) {
    const middle = mean + spread * random.normal();
    // The axes of a turning strand lie anywhere against those of the gauge.
    const difference = turns ? oval * Math.cos(2 * Math.PI * random.uniform()) : oval;
    for (let repeat = 0; repeat < repeats; repeat++) {
      columns.position.push(500 * place);
      columns.firstDiameter.push(read(middle + difference / 2));
      columns.secondDiameter.push(read(middle - difference / 2));
    }
  }
  return {
    kind,
    columns,
    run: { filamentDiameter: 1.75, lengthResolution: resolution, lengthAccuracy: accuracy },
    truths: {
      meanDiameter: mean,
      diameterSpread: spread,
      ovality: turns ? (2 / Math.PI) * oval : oval,
      flowError: (mean ** 2 + spread ** 2 - (turns ? oval ** 2 / 8 : oval ** 2 / 4)) / 1.75 ** 2 - 1,
    },
  };
}
