import { partOffsets } from '../../src/knowledge/part-offset.ts';
import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

const temperature = { from: -30, offsets: [-12, 6], unit: 1, step: 0.1, name: '' } as const;
/** In per cent; the air dries, and the display is coarser. */
const humidity = { from: 30, offsets: [-6, 8], unit: 0.01, step: 1, name: 'humidity, ' } as const;

/** Lowest and highest set value of each part, °C or per cent, and how fast it gets there, s. */
const parts = [
  { part: 'nozzle', low: 190, high: 260, constant: 25, ...temperature },
  { part: 'bed', low: 50, high: 100, constant: 120, ...temperature },
  { part: 'chamber', low: 35, high: 70, constant: 400, ...temperature },
  { part: 'dryer', low: 45, high: 70, constant: 500, ...temperature },
  { part: 'dryer', low: 15, high: 45, constant: 600, ...humidity },
] as const;
/** K; what counts as settled. */
const within = 2;

/** Set temperatures, or humidities, of an invented part, read by an instrument that is off by something of its own. */
export function simulateSetPoint(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`set point ${index}`);
  const { normal } = noise ?? random;
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const simulated = parts[index % parts.length] ?? parts[0];
  const { low, high, constant, from, offsets, unit, step, name } = simulated;
  const count = 1 + (Math.floor(index / parts.length) % 4);
  const sets = Array.from({ length: count }, (_, place) =>
    Math.round(low + ((high - low) * (place + 0.5)) / count),
  );
  const middle = sets.reduce((sum, set) => sum + set, 0) / count;
  const [offset, slope] = [between(offsets[0], offsets[1]), between(-0.05, 0.05)];
  const accuracy = between(0.5, 2);
  const [error, scatter, warming] = [
    accuracy * between(-1, 1),
    between(0.1, 0.5),
    constant * between(0.6, 1.4),
  ];
  const rows = sets.flatMap((set) =>
    Array.from({ length: 14 }, (_, reading) => {
      const time = (reading + 1) * warming * 0.75;
      const end = set + offset + slope * (set - middle);
      const here = end + from * Math.exp(-time / warming) + error + scatter * normal();
      return [set * unit, time, step * Math.round(here / step) * unit] as const;
    }),
  );
  const last = sets.at(-1) ?? middle;
  const reached = (last + offset + slope * (last - middle)) * unit;
  return {
    kind: `${name}${count < 3 ? `${count} set` : '3 or 4'}`,
    ...checkOf(simulated, rows, accuracy),
    truths: {
      ...(name === ''
        ? { [partOffsets[simulated.part]]: offset, reachedTemperature: reached }
        : { dryerHumidityOffset: offset * unit, reachedHumidity: reached }),
      settlingTime: warming * Math.log(Math.abs(from) / within),
      ...(count < 3 ? {} : { offsetSlope: slope }),
    },
  };
}

function checkOf(
  { part, unit, step, name }: (typeof parts)[number],
  rows: readonly (readonly [number, number, number])[],
  accuracy: number,
): Pick<SimulatedBench, 'columns' | 'run'> {
  const [set, elapsedTime, shown] = [0, 1, 2].map((column) => rows.map((row) => row[column as 0 | 1 | 2]));
  return name === ''
    ? {
        columns: {
          setTemperature: set ?? [],
          elapsedTime: elapsedTime ?? [],
          referenceTemperature: shown ?? [],
        },
        run: {
          checkedPart: part,
          thermometerAccuracy: accuracy,
          thermometerResolution: step,
          settledWithin: within,
        },
      }
    : {
        columns: { setHumidity: set ?? [], elapsedTime: elapsedTime ?? [], referenceHumidity: shown ?? [] },
        run: { checkedPart: part, hygrometerAccuracy: accuracy * unit, hygrometerResolution: step * unit },
      };
}
