import { describe } from '../../statistics/describe.ts';
import type { Observations } from '../sheet/observations.ts';

/** A set temperature with what the reference showed once it had settled; temperatures in °C, times in s. */
export interface SetPoint {
  readonly set: number;
  /** The later half of the settled readings. */
  readonly readings: readonly number[];
  /** Last time at which it had not settled, and first at which it had; null where no times were read. */
  readonly settled: { readonly after: number; readonly by: number } | null;
}

/** Standard deviations of a reading within which it may be on either side of the tolerance. */
const unsure = 1.5;

interface Reading {
  readonly time: number | null;
  readonly temperature: number;
}

/** The readings by set temperature, ascending, without those before it had settled. */
export function setPointsOf({ columns, rows }: Observations, within: number): SetPoint[] {
  const { setTemperature = [], referenceTemperature = [], elapsedTime } = columns;
  const sets = [...new Set(setTemperature)].sort((one, other) => one - other);
  return sets.map((set) => {
    const readings = rows.flatMap((_, index): Reading[] =>
      setTemperature[index] === set
        ? [{ time: elapsedTime?.[index] ?? null, temperature: referenceTemperature[index] ?? Number.NaN }]
        : [],
    );
    return settledPart(
      set,
      readings.toSorted((one, other) => (one.time ?? 0) - (other.time ?? 0)),
      within,
    );
  });
}

/** From the first reading on from which all stay near the mean of the last third; all where no times were read. */
function settledPart(set: number, readings: readonly Reading[], within: number): SetPoint {
  const temperatures = readings.map(({ temperature }) => temperature);
  if (readings.some(({ time }) => time === null)) return { set, readings: temperatures, settled: null };
  const last = temperatures.slice(-Math.max(3, Math.ceil(temperatures.length / 3)));
  const { mean, standardDeviation } = describe(last);
  const lastBeyond = (tolerance: number) =>
    temperatures.findLastIndex((temperature) => Math.abs(temperature - mean) > tolerance);
  const first = lastBeyond(within) + 1;
  // A reading near the tolerance may be on either side of it by its scatter alone.
  const doubt = Math.min(unsure * standardDeviation, within / 2);
  const timeAt = (index: number) => readings[index]?.time ?? null;
  const settled = temperatures.slice(first);
  // The first of them still creep: the later half counts, and three at least.
  const kept = settled.slice(Math.min(Math.floor(settled.length / 2), Math.max(0, settled.length - 3)));
  return {
    set,
    readings: kept,
    settled: {
      after: timeAt(lastBeyond(within + doubt)) ?? 0,
      by: timeAt(lastBeyond(within - doubt) + 1) ?? timeAt(readings.length - 1) ?? 0,
    },
  };
}
