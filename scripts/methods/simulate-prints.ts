import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** Relative scatter of time and mass from one print to the next. */
const kinds = {
  usual: { time: [0.001, 0.004], mass: [0.004, 0.013] },
  'twice the usual': { time: [0.005, 0.007], mass: [0.017, 0.023] },
  'ten times the usual': { time: [0.02, 0.04], mass: [0.07, 0.13] },
} as const;

type Kind = keyof typeof kinds;
const kindNames = Object.keys(kinds) as Kind[];

/** Two to four prints of an invented job. */
export function simulatePrints(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`prints ${index}`);
  const { normal } = noise ?? random;
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random.uniform();
  const kind = kindNames[index % kindNames.length] ?? 'usual';
  const prints = 2 + (Math.floor(index / kindNames.length) % 3);
  const [time, mass] = [between([900, 20_000]), between([5, 200])];
  const [timeScatter, massScatter] = [between(kinds[kind].time), between(kinds[kind].mass)];
  const drawn = (mean: number, scatter: number, step: number) =>
    Array.from({ length: prints }, () => Math.round((mean * (1 + scatter * normal())) / step) * step);
  return {
    kind,
    columns: { printTime: drawn(time, timeScatter, 1), mass: drawn(mass, massScatter, 0.1) },
    run: { massResolution: 0.1 },
    truths: { printTime: time, printMass: mass },
  };
}
