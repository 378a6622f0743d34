import { checkedParts, partOffsets } from '../../src/knowledge/part-offset.ts';
import { randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** Lowest and highest set temperature of each part, °C, and how fast it warms up, s. */
const parts = {
  nozzle: { low: 190, high: 260, constant: 25 },
  bed: { low: 50, high: 100, constant: 120 },
  chamber: { low: 35, high: 70, constant: 400 },
  dryer: { low: 45, high: 70, constant: 500 },
} as const;
/** K; what counts as settled. */
const within = 2;

/** Set temperatures of an invented part, read by a thermometer that is off by something of its own. */
export function simulateSetPoint(index: number): SimulatedBench {
  const random = randomSource(`set point ${index}`);
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const part = checkedParts[index % checkedParts.length] ?? 'nozzle';
  const { low, high, constant } = parts[part];
  const count = 1 + (Math.floor(index / checkedParts.length) % 4);
  const sets = Array.from({ length: count }, (_, step) =>
    Math.round(low + ((high - low) * (step + 0.5)) / count),
  );
  const middle = sets.reduce((sum, set) => sum + set, 0) / count;
  const [offset, slope] = [between(-12, 6), between(-0.05, 0.05)];
  const accuracy = between(0.5, 2);
  const [error, scatter, warming] = [
    accuracy * between(-1, 1),
    between(0.1, 0.5),
    constant * between(0.6, 1.4),
  ];
  const columns = { setTemperature: [], elapsedTime: [], referenceTemperature: [] } as Record<
    string,
    number[]
  >;
  for (const set of sets) {
    const end = set + offset + slope * (set - middle);
    for (let reading = 1; reading <= 14; reading++) {
      const time = reading * warming * 0.75;
      const here = end - 30 * Math.exp(-time / warming);
      columns.setTemperature?.push(set);
      columns.elapsedTime?.push(time);
      columns.referenceTemperature?.push(Math.round(10 * (here + error + scatter * random.normal())) / 10);
    }
  }
  const last = sets.at(-1) ?? middle;
  return {
    kind: count < 3 ? `${count} set temperatures` : '3 or 4',
    columns,
    run: {
      checkedPart: part,
      thermometerAccuracy: accuracy,
      thermometerResolution: 0.1,
      settledWithin: within,
    },
    truths: {
      [partOffsets[part]]: offset,
      settlingTime: warming * Math.log(30 / within),
      reachedTemperature: last + offset + slope * (last - middle),
      ...(count < 3 ? {} : { offsetSlope: slope }),
    },
  };
}
